import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The angle of a leaning ladder with the ground: tan A = h / b. Height and distance of the feet in m, above 0; angle in degrees.
 * Source: right-triangle trigonometry; about 75° is the aim (LA455).
 */
export const ladderAngle = calculation({
  id: 'ladder-angle',
  title: 'Checking a ladder’s angle',
  topic: 'heights',
  formula: 'tan A = h / b',
  inputs: {
    height: quantity('height of the point of rest', 'm', { min: 0.01, max: 30 }),
    base: quantity('distance of the feet from the wall', 'm', { min: 0.01, max: 30 }),
  },
  outputs: { angle: 'degree' },
  sources: ['triangle', 'ladder'],
  validity: 'A straight ladder on level ground against an upright wall; a mark on the ladder itself comes first.',
  foundBy: ['75 degrees', 'ladder slope', 'is my ladder too steep', 'ladder too shallow'],
  caution: 'height',
  checks: ['ladder angle from height and base', 'ladder angle from the 1 in 4 rule'],
  work({ height, base }) {
    const angle = (Math.atan2(height, base) * 180) / Math.PI;
    return {
      result: { angle },
      steps: [
        'The tangent of the angle is height over distance out: tan A = h / b.',
        `tan A = ${put(height, 'm')} / ${put(base, 'm')} = ${out(height / base, '')}`,
        `A = ${out(angle, 'degree')}. The aim is about ${put(75, 'degree')}.`,
      ],
    };
  },
});
