import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * How far out a leaning ladder's feet go for a given angle: b = h / tan A. Height in m, angle with the ground in degrees (75 if left out;
 * 65 to 80, since a ladder slides below that and tips back above); distance in m. Source: right-triangle trigonometry.
 */
export const ladderBaseAtAngle = calculation({
  id: 'ladder-base-at-angle',
  title: 'How far out the feet go for an angle',
  topic: 'heights',
  formula: 'b = h / tan A',
  inputs: {
    height: quantity('height of the point of rest', 'm', { min: 0, max: 30 }),
    angle: optional(quantity('angle with the ground, 75° if left out', 'degree', { min: 65, max: 80 })),
  },
  outputs: { base: 'm' },
  sources: ['triangle', 'ladder'],
  validity: 'A straight ladder on firm, level ground against an upright wall; set it at the angle marked on it.',
  rule: 'The angle itself; one out to four up is 76.0°, and its feet stand 7 % nearer than at 75°',
  foundBy: ['ladder at 75 degrees', 'angle marked on the ladder', 'feet of the ladder', 'ladder angle to distance'],
  caution: 'height',
  checks: ['base distance at exactly 75 degrees'],
  work({ height, angle = 75 }) {
    const tangent = Math.tan((angle * Math.PI) / 180);
    const base = height / tangent;
    return {
      result: { base },
      steps: [
        `The tangent of the angle: tan ${put(angle, 'degree')} = ${out(tangent, '')}`,
        `Distance out: b = h / tan A = ${put(height, 'm')} / ${out(tangent, '')} = ${out(base, 'm')}`,
        'Measure it on the ground: a ladder that looks right can be well off.',
      ],
    };
  },
});
