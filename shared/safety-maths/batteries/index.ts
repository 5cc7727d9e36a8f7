import type { Calculation } from '../calculation.js';
import { awgVoltageDrop } from './awg-voltage-drop.js';
import { awgWire } from './awg-wire.js';
import { batteriesInParallel } from './batteries-in-parallel.js';
import { batteryEnergy } from './battery-energy.js';
import { batteryRunTime } from './battery-run-time.js';
import { batteryShortCircuit } from './battery-short-circuit.js';
import { bladeFuseColour } from './blade-fuse-colour.js';
import { bladeFuseOpeningTime } from './blade-fuse-opening-time.js';
import { cRateCurrent } from './c-rate-current.js';
import { cRate } from './c-rate.js';
import { cellVoltages } from './cell-voltages.js';
import { chargeFromCurrent } from './charge-from-current.js';
import { chargingTime } from './charging-time.js';
import { conductorResistanceFromArea } from './conductor-resistance-from-area.js';
import { conductorResistance } from './conductor-resistance.js';
import { copperTemperatureFactor } from './copper-temperature-factor.js';
import { dcCableChoice } from './dc-cable-choice.js';
import { dcFuseChoice } from './dc-fuse-choice.js';
import { dcVoltageDrop } from './dc-voltage-drop.js';
import { hydrogenInAir } from './hydrogen-in-air.js';
import { internalResistanceFromLoad } from './internal-resistance-from-load.js';
import { internalResistance } from './internal-resistance.js';
import { leadAcidChargeVoltages } from './lead-acid-charge-voltages.js';
import { lithiumChargingTemperature } from './lithium-charging-temperature.js';
import { packChargeVoltage } from './pack-charge-voltage.js';
import { radioInputCurrent } from './radio-input-current.js';
import { ratedDischargeCurrent } from './rated-discharge-current.js';
import { runTimeTransmitReceive } from './run-time-transmit-receive.js';

export const batteries: readonly Calculation[] = [
  batteryRunTime,
  runTimeTransmitReceive,
  chargeFromCurrent,
  chargingTime,
  batteryEnergy,
  batteryShortCircuit,
  batteriesInParallel,
  internalResistance,
  internalResistanceFromLoad,
  ratedDischargeCurrent,
  cRateCurrent,
  cRate,
  cellVoltages,
  packChargeVoltage,
  lithiumChargingTemperature,
  leadAcidChargeVoltages,
  hydrogenInAir,
  radioInputCurrent,
  dcVoltageDrop,
  dcCableChoice,
  conductorResistance,
  conductorResistanceFromArea,
  copperTemperatureFactor,
  awgWire,
  awgVoltageDrop,
  dcFuseChoice,
  bladeFuseColour,
  bladeFuseOpeningTime,
];
