import type { Calculation } from '../calculation.js';
import { continuousBreakerLoad } from './continuous-breaker-load.js';
import { currentFromPower } from './current-from-power.js';
import { energyFromPowerAndTime } from './energy-from-power-and-time.js';
import { faultCurrentToEarth } from './fault-current-to-earth.js';
import { heatInAConnection } from './heat-in-a-connection.js';
import { leakageSum } from './leakage-sum.js';
import { peakVoltage } from './peak-voltage.js';
import { powerFromCurrent } from './power-from-current.js';
import { powerFromVoltageAndResistance } from './power-from-voltage-and-resistance.js';
import { resistanceFromVoltageAndCurrent } from './resistance-from-voltage-and-current.js';
import { transmitterHeat } from './transmitter-heat.js';
import { voltageFromCurrentAndResistance } from './voltage-from-current-and-resistance.js';
import { wrongSupplyPower } from './wrong-supply-power.js';

export const electricalBasics: readonly Calculation[] = [
  currentFromPower,
  powerFromCurrent,
  heatInAConnection,
  powerFromVoltageAndResistance,
  voltageFromCurrentAndResistance,
  resistanceFromVoltageAndCurrent,
  energyFromPowerAndTime,
  peakVoltage,
  transmitterHeat,
  wrongSupplyPower,
  faultCurrentToEarth,
  leakageSum,
  continuousBreakerLoad,
];
