import { batteriesSources } from './batteries.js';
import { capacitorsSources } from './capacitors.js';
import { commonSources } from './common.js';
import { electricalSources } from './electrical.js';
import { exposureSources } from './exposure.js';
import { heightsSources } from './heights.js';
import { noiseSources } from './noise.js';
import { outdoorsSources } from './outdoors.js';
import { plugFusesSources } from './plug-fuses.js';
import { radioSources } from './radio.js';
import { shockSources } from './shock.js';
import { workshopSources } from './workshop.js';

export type { MathsSource } from './source.js';

/** Every source by its key. A new one is a line in its topic's file. */
export const mathsSources = {
  ...commonSources,
  ...electricalSources,
  ...plugFusesSources,
  ...shockSources,
  ...batteriesSources,
  ...capacitorsSources,
  ...heightsSources,
  ...workshopSources,
  ...outdoorsSources,
  ...radioSources,
  ...exposureSources,
  ...noiseSources,
} as const;

export type MathsSourceKey = keyof typeof mathsSources;
