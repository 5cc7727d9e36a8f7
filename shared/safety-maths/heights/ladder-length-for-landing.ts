import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The least length of a ladder to step off at a landing: it goes 1 m (or another height, at least 0.9 m) above the landing, counted
 * vertically, at 1 in 4: L = (h + a) × √17 / 4, b = h / 4. Heights in m; length and distance out in m.
 * Source: HSE, ladders used for access; LA455; OSHA's 3 ft is 0.914 m.
 */
export const ladderLengthForLanding = calculation({
  id: 'ladder-length-for-landing',
  title: 'Ladder long enough to step off',
  topic: 'heights',
  formula: 'L = (h + a) × √17 / 4',
  inputs: {
    landing_height: quantity('height of the landing', 'm', { min: 0, max: 30 }),
    height_above: optional(quantity('height of the ladder above the landing, 1 m if left out', 'm', { min: 0.9, max: 3 })),
  },
  outputs: { length: 'm', base: 'm' },
  sources: ['landing', 'landingFeet', 'triangle', 'ladder'],
  validity: 'A straight ladder, secured, set one out to four up against a landing that bears the load; it gives the length as it stands.',
  rule: 'At least 1 m above the landing, as in Great Britain and Norway; North American rules say 3 ft (0.91 m)',
  foundBy: ['getting onto a roof', 'step off a ladder', 'ladder for a flat roof', 'ladder above the edge'],
  caution: 'height',
  checks: ['least ladder length for access (1 m above the landing)'],
  work({ landing_height: height, height_above: above = 1 }) {
    const top = height + above;
    const length = (top * Math.sqrt(17)) / 4;
    return {
      result: { length, base: height / 4 },
      steps: [
        `The ladder ends ${put(above, 'm')} above the landing: h + a = ${put(height, 'm')} + ${put(above, 'm')} = ${put(top, 'm')} up.`,
        `Four up and one out: L = (h + a) × √17 / 4 = ${put(top, 'm')} × 4.123 / 4 = ${out(length, 'm')}. Never take a shorter one.`,
        `The feet stand a quarter of the landing’s height out: b = h / 4 = ${out(height / 4, 'm')}`,
      ],
    };
  },
});
