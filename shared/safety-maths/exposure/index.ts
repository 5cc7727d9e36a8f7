import type { Calculation } from '../calculation.js';
import { averagePower } from './average-power.js';
import { complianceDistance } from './compliance-distance.js';
import { fieldStrength } from './field-strength.js';
import { powerDensity } from './power-density.js';

export const exposure: readonly Calculation[] = [averagePower, powerDensity, fieldStrength, complianceDistance];
