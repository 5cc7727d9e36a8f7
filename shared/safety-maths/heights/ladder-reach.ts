import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The height a ladder of given length rests at when it stands by the 1 in 4 rule: h = 4 × L / √17, b = h / 4. Length to the point of
 * rest in m; height and distance out in m. Source: right-triangle trigonometry on LA455's rule.
 */
export const ladderReach = calculation({
  id: 'ladder-reach',
  title: 'Height reached by a ladder',
  topic: 'heights',
  formula: 'h = 4 × L / √17',
  inputs: { length: quantity('length up to the point of rest', 'm', { min: 0, max: 30 }) },
  outputs: { height: 'm', base: 'm' },
  sources: ['triangle', 'ladder'],
  validity: 'A straight ladder set one out to four up; an extended ladder counts as long as it stands, without the overlap.',
  foundBy: ['how high does a ladder go', 'ladder length', 'ladder height', 'which ladder'],
  caution: 'height',
  checks: ['contact height and base from ladder length'],
  work({ length }) {
    const base = length / Math.sqrt(17);
    const height = 4 * base;
    return {
      result: { height, base },
      steps: [
        'The ladder is the long side of a right triangle, four up and one out: L² = h² + b², b = h / 4, so h = 4 × L / √17.',
        `h = 4 × ${put(length, 'm')} / 4.123 = ${out(height, 'm')}`,
        `The feet stand ${out(base, 'm')} out.`,
      ],
    };
  },
});
