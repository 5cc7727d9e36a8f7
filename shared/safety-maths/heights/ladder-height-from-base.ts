import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The height a ladder rests at by the 1 in 4 rule when the place of its feet is given: h = 4 × b; its length up to there is
 * L = b × √17. Distance in m; height and length in m. Source: LA455, INDG455; right-triangle trigonometry.
 */
export const ladderHeightFromBase = calculation({
  id: 'ladder-height-from-base',
  title: 'Height reached from where the feet stand',
  topic: 'heights',
  formula: 'h = 4 × b',
  inputs: { base: quantity('distance of the feet from the wall', 'm', { min: 0, max: 7.5 }) },
  outputs: { height: 'm', length: 'm' },
  sources: ['ladder', 'triangle'],
  validity: 'A straight ladder on firm, level ground against an upright wall, set one out to four up.',
  rule: 'One out for every four up the wall',
  foundBy: ['feet of the ladder', 'no room for the ladder', 'ladder over a flower bed', 'four times as high'],
  caution: 'height',
  checks: [],
  work({ base }) {
    const [height, length] = [4 * base, base * Math.sqrt(17)];
    return {
      result: { height, length },
      steps: [
        `Four up for every one out: h = 4 × b = 4 × ${put(base, 'm')} = ${out(height, 'm')}`,
        `The ladder up to there is the long side of the triangle: L = b × √17 = ${put(base, 'm')} × 4.123 = ${out(length, 'm')}`,
        'Never move the feet in to gain height: use a longer ladder.',
      ],
    };
  },
});
