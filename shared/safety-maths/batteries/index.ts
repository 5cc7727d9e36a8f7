import type { Calculation } from '../calculation.js';
import { batteryEnergy } from './battery-energy.js';
import { batteryRunTime } from './battery-run-time.js';
import { batteryShortCircuit } from './battery-short-circuit.js';
import { dcVoltageDrop } from './dc-voltage-drop.js';

export const batteries: readonly Calculation[] = [batteryRunTime, batteryEnergy, batteryShortCircuit, dcVoltageDrop];
