import type { Calculation } from '../calculation.js';
import { bleedResistorForTimeConstant } from './bleed-resistor-for-time-constant.js';
import { bleedResistorLimit } from './bleed-resistor-limit.js';
import { bleedTime } from './bleed-time.js';
import { capacitorEnergy } from './capacitor-energy.js';
import { chargeLeft } from './charge-left.js';
import { plugDischargeRules } from './plug-discharge-rules.js';
import { residualCharge } from './residual-charge.js';
import { timeConstant } from './time-constant.js';
import { timeToFraction } from './time-to-fraction.js';

export const capacitors: readonly Calculation[] = [
  capacitorEnergy,
  residualCharge,
  timeConstant,
  chargeLeft,
  timeToFraction,
  bleedTime,
  bleedResistorLimit,
  bleedResistorForTimeConstant,
  plugDischargeRules,
];
