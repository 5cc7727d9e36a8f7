import { calculation } from '../calculation.js';
import { choice, optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

const foot = 0.3048;
/** The length of a half-wave wire at 1 MHz, in m, by either formula in use. */
const atOneMegahertz = { '143 / f metres': 143, '468 / f feet': 468 * foot } as const;
const formulas = Object.keys(atOneMegahertz) as (keyof typeof atOneMegahertz)[];

/**
 * How far the fixed support of a half-wave wire stays from an overhead line, should the other end break: d = L + margin, L = 143 / f in m
 * (in North America 468 / f in ft, 0.25 % less). Frequency in MHz; margin in m; length and distance in m. Source: antenna practice.
 */
export const wireSwingClearance = calculation({
  id: 'wire-swing-clearance',
  title: 'Room for a wire that breaks',
  topic: 'heights',
  formula: 'd = 143 / f + margin',
  inputs: {
    frequency: quantity('frequency', 'MHz', { min: 0.1, max: 3000 }),
    margin: quantity('margin', 'm', { min: 0, max: 100 }),
    wire_formula: optional(choice('formula for the wire', formulas)),
  },
  outputs: { distance: 'm', length: 'm' },
  sources: ['wire', 'wireSwing'],
  validity: 'A single half-wave wire that breaks at one end; wind, a falling support or a longer wire need more room.',
  rule: 'Length of the wire plus the margin; wire by 143 / f metres, in North America by 468 / f feet',
  foundBy: ['wire antenna near a power line', 'broken wire', 'swing of a wire', 'dipole near a line', 'wire clearance'],
  regionDependence: 'the formula for the wire, when none is chosen',
  caution: 'line',
  checks: [],
  work({ frequency, margin, wire_formula: chosen }, region) {
    const formula = chosen ?? (region.id === 'na' ? '468 / f feet' : '143 / f metres');
    const length = atOneMegahertz[formula] / frequency;
    const distance = length + margin;
    return {
      result: { distance, length },
      steps: [
        formula === '143 / f metres'
          ? `Half-wave wire: L = 143 / f = 143 / ${put(frequency, '')} = ${out(length, 'm')}`
          : `Half-wave wire: L = 468 / f = 468 / ${put(frequency, '')} = ${out(length / foot, 'ft')} = ${out(length, 'm')}`,
        `If one end breaks, all of it can swing: d = L + margin = ${out(length, 'm')} + ${put(margin, 'm')} = ${out(distance, 'm')}`,
        'A broken wire can whip about. Ask the network operator before putting one anywhere near a line.',
      ],
    };
  },
});
