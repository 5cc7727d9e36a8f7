import type { Calculation } from '../calculation.js';
import { averagingTime } from './averaging-time.js';
import { coaxLoss } from './coax-loss.js';
import { dbiFromDbd } from './dbi-from-dbd.js';
import { dbmFromWatts } from './dbm-from-watts.js';
import { decibelsFromRatio } from './decibels-from-ratio.js';
import { dutyFactor } from './duty-factor.js';
import { eirp } from './eirp.js';
import { erpFromEirp } from './erp-from-eirp.js';
import { feederLossPower } from './feeder-loss-power.js';
import { feederPowerByLength } from './feeder-power-by-length.js';
import { fieldRegions } from './field-regions.js';
import { halfWaveLength } from './half-wave-length.js';
import { lossPer100Feet } from './loss-per-100-feet.js';
import { ratioFromDecibels } from './ratio-from-decibels.js';
import { rfVoltage } from './rf-voltage.js';
import { wattsFromDbm } from './watts-from-dbm.js';
import { wavelength } from './wavelength.js';

export const radio: readonly Calculation[] = [
  wavelength,
  halfWaveLength,
  ratioFromDecibels,
  decibelsFromRatio,
  dbmFromWatts,
  wattsFromDbm,
  dbiFromDbd,
  feederLossPower,
  feederPowerByLength,
  coaxLoss,
  lossPer100Feet,
  eirp,
  erpFromEirp,
  rfVoltage,
  dutyFactor,
  averagingTime,
  fieldRegions,
];
