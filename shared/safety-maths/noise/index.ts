import type { Calculation } from '../calculation.js';
import { allowedNoiseTime } from './allowed-noise-time.js';

export const noise: readonly Calculation[] = [allowedNoiseTime];
