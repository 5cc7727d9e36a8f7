import type { Calculation } from '../calculation.js';
import { dbmFromWatts } from './dbm-from-watts.js';
import { eirp } from './eirp.js';
import { feederLossPower } from './feeder-loss-power.js';
import { halfWaveLength } from './half-wave-length.js';
import { wattsFromDbm } from './watts-from-dbm.js';
import { wavelength } from './wavelength.js';

export const radio: readonly Calculation[] = [wavelength, halfWaveLength, dbmFromWatts, wattsFromDbm, feederLossPower, eirp];
