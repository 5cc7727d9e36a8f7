import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The resistance of a fuse from its loss at rated current: R = P / I². Rating in A, loss in W; resistance in Ω.
 * A cold fuse measures less than this. Source: P = I² R, SI Brochure; loss of a 13 A fuse from an article.
 */
export const fuseResistance = calculation({
  id: 'fuse-resistance',
  title: 'Resistance of a fuse from its loss',
  topic: 'plug-fuses',
  formula: 'R = P / I²',
  inputs: {
    rating: quantity('rating of the fuse', 'A', { min: 0.01, max: 1000 }),
    power_loss: quantity('power lost in the fuse at rated current', 'W', { min: 0, max: 100 }),
  },
  outputs: { resistance: 'ohm' },
  sources: ['si', 'fuseLoss'],
  validity: 'A fuse warm from its rated current; measured cold, a good fuse reads less.',
  caution: 'plug',
  checks: ['greatest cold resistance of a 13 A fuse with 1 W loss'],
  work({ rating, power_loss: loss }) {
    const resistance = loss / (rating * rating);
    return {
      result: { resistance },
      steps: [
        'Power lost is the current squared times the resistance, so R = P / I².',
        `R = P / I² = ${put(loss, 'W')} / (${put(rating, 'A')})² = ${out(resistance, 'ohm')}`,
      ],
    };
  },
});
