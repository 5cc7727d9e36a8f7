import { batteryEnergy } from './batteries/battery-energy.js';
import { batteryRunTime } from './batteries/battery-run-time.js';
import { batteryShortCircuit } from './batteries/battery-short-circuit.js';
import { dcVoltageDrop } from './batteries/dc-voltage-drop.js';
import { bleedTime } from './capacitors/bleed-time.js';
import { capacitorEnergy } from './capacitors/capacitor-energy.js';
import { timeConstant } from './capacitors/time-constant.js';
import type { Calculation } from './calculation.js';
import { bodyCurrent } from './electric-shock/body-current.js';
import { currentFromPower } from './electrical-basics/current-from-power.js';
import { energyFromPowerAndTime } from './electrical-basics/energy-from-power-and-time.js';
import { heatInAConnection } from './electrical-basics/heat-in-a-connection.js';
import { peakVoltage } from './electrical-basics/peak-voltage.js';
import { powerFromCurrent } from './electrical-basics/power-from-current.js';
import { powerFromVoltageAndResistance } from './electrical-basics/power-from-voltage-and-resistance.js';
import { resistanceFromVoltageAndCurrent } from './electrical-basics/resistance-from-voltage-and-current.js';
import { voltageFromCurrentAndResistance } from './electrical-basics/voltage-from-current-and-resistance.js';
import { averagePower } from './exposure/average-power.js';
import { complianceDistance } from './exposure/compliance-distance.js';
import { fieldStrength } from './exposure/field-strength.js';
import { powerDensity } from './exposure/power-density.js';
import { ladderAngle } from './heights/ladder-angle.js';
import { ladderBase } from './heights/ladder-base.js';
import { ladderLengthForLanding } from './heights/ladder-length-for-landing.js';
import { ladderReach } from './heights/ladder-reach.js';
import { mastFallRadius } from './heights/mast-fall-radius.js';
import { allowedNoiseTime } from './noise/allowed-noise-time.js';
import { extensionLeadLoad } from './plug-fuses/extension-lead-load.js';
import { fuseBy700Watts } from './plug-fuses/fuse-by-700-watts.js';
import { fuseFromCurrent } from './plug-fuses/fuse-from-current.js';
import { fuseFromPower } from './plug-fuses/fuse-from-power.js';
import { dbmFromWatts } from './radio/dbm-from-watts.js';
import { eirp } from './radio/eirp.js';
import { feederLossPower } from './radio/feeder-loss-power.js';
import { halfWaveLength } from './radio/half-wave-length.js';
import { wattsFromDbm } from './radio/watts-from-dbm.js';
import { wavelength } from './radio/wavelength.js';
import { lightningDistance } from './weather/lightning-distance.js';

/** Every calculation there is, topic by topic. A new one is a file in its topic's folder and a line here. */
export const calculations: readonly Calculation[] = [
  currentFromPower,
  powerFromCurrent,
  heatInAConnection,
  powerFromVoltageAndResistance,
  voltageFromCurrentAndResistance,
  resistanceFromVoltageAndCurrent,
  energyFromPowerAndTime,
  peakVoltage,
  fuseFromPower,
  fuseFromCurrent,
  fuseBy700Watts,
  extensionLeadLoad,
  bodyCurrent,
  batteryRunTime,
  batteryEnergy,
  batteryShortCircuit,
  dcVoltageDrop,
  capacitorEnergy,
  timeConstant,
  bleedTime,
  ladderBase,
  ladderAngle,
  ladderReach,
  ladderLengthForLanding,
  mastFallRadius,
  wavelength,
  halfWaveLength,
  dbmFromWatts,
  wattsFromDbm,
  feederLossPower,
  eirp,
  averagePower,
  powerDensity,
  fieldStrength,
  complianceDistance,
  lightningDistance,
  allowedNoiseTime,
];

const byId = new Map(calculations.map((one) => [one.id, one]));

/** The calculation of that id, or undefined. */
export const findCalculation = (id: string): Calculation | undefined => byId.get(id);
