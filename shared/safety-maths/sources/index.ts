import { commonSources } from './common.js';

export type { MathsSource } from './source.js';

/** Every source by its key. */
export const mathsSources = commonSources;

export type MathsSourceKey = keyof typeof mathsSources;
