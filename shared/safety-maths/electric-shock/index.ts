import type { Calculation } from '../calculation.js';
import { bodyCurrent } from './body-current.js';

export const electricShock: readonly Calculation[] = [bodyCurrent];
