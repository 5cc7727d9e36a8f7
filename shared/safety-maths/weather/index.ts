import type { Calculation } from '../calculation.js';
import { lightningDistance } from './lightning-distance.js';
import { lightningShelter } from './lightning-shelter.js';

export const weather: readonly Calculation[] = [lightningDistance, lightningShelter];
