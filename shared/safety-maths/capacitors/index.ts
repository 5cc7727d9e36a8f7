import type { Calculation } from '../calculation.js';
import { bleedTime } from './bleed-time.js';
import { capacitorEnergy } from './capacitor-energy.js';
import { timeConstant } from './time-constant.js';

export const capacitors: readonly Calculation[] = [capacitorEnergy, timeConstant, bleedTime];
