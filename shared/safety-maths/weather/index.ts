import type { Calculation } from '../calculation.js';
import { lightningDistance } from './lightning-distance.js';

export const weather: readonly Calculation[] = [lightningDistance];
