import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The least length of a ladder to step off at a landing: it goes 1 m above the landing, counted vertically, at 1 in 4:
 * L = (h + 1 m) × √17 / 4, b = h / 4. Height of the landing in m; length and distance out in m. Source: HSE, ladders used for access; LA455.
 */
export const ladderLengthForLanding = calculation({
  id: 'ladder-length-for-landing',
  title: 'Ladder long enough to step off',
  topic: 'heights',
  formula: 'L = (h + 1 m) × √17 / 4',
  inputs: { landing_height: quantity('height of the landing', 'm', { min: 0, max: 30 }) },
  outputs: { length: 'm', base: 'm' },
  sources: ['landing', 'triangle', 'ladder'],
  caution: 'height',
  checks: ['least ladder length for access (1 m above the landing)'],
  work({ landing_height: height }) {
    const length = ((height + 1) * Math.sqrt(17)) / 4;
    return {
      result: { length, base: height / 4 },
      steps: [
        `The ladder ends ${put(1, 'm')} above the landing: ${put(height, 'm')} + ${put(1, 'm')} = ${put(height + 1, 'm')} up.`,
        `Four up and one out makes the ladder √17 / 4, about 1.031, times as long: L = ${out(length, 'm')}`,
        `The feet stand a quarter of the landing’s height out: ${out(height / 4, 'm')}`,
      ],
    };
  },
});
