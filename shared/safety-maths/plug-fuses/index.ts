import type { Calculation } from '../calculation.js';
import { extensionLeadLoad } from './extension-lead-load.js';
import { fuseBy700Watts } from './fuse-by-700-watts.js';
import { fuseFromCurrent } from './fuse-from-current.js';
import { fuseFromPower } from './fuse-from-power.js';

export const plugFuses: readonly Calculation[] = [fuseFromPower, fuseFromCurrent, fuseBy700Watts, extensionLeadLoad];
