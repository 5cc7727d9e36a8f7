import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The length of a leaning ladder from its feet to the point where it rests, by the 1 in 4 rule: L = h × √17 / 4, b = h / 4.
 * Height in m; length and distance out in m. Source: right-triangle trigonometry on LA455's rule.
 */
export const ladderLengthToContact = calculation({
  id: 'ladder-length-to-contact',
  title: 'Length of ladder up to where it rests',
  topic: 'heights',
  formula: 'L = h × √17 / 4',
  inputs: { height: quantity('height of the point of rest', 'm', { min: 0, max: 30 }) },
  outputs: { length: 'm', base: 'm' },
  sources: ['triangle', 'ladder'],
  validity: 'A straight ladder set one out to four up; to step off at the top it must go on at least 1 m above the landing.',
  rule: 'One out for every four up the wall',
  foundBy: ['how long a ladder', 'ladder for a wall', 'ladder size', 'ladder to the gutter'],
  caution: 'height',
  checks: ['ladder length to the point of contact'],
  work({ height }) {
    const base = height / 4;
    const length = base * Math.sqrt(17);
    return {
      result: { length, base },
      steps: [
        `The feet stand a quarter of the height out: b = h / 4 = ${put(height, 'm')} / 4 = ${out(base, 'm')}`,
        `The ladder is the long side: L = h × √17 / 4 = ${put(height, 'm')} × 4.123 / 4 = ${out(length, 'm')}`,
        'That is only up to where it rests. The top rungs are not for standing on, so the ladder must be longer.',
      ],
    };
  },
});
