import { calculation } from '../calculation.js';
import { choice, optional } from '../inputs.js';
import { put } from '../working.js';

/**
 * The fixed figures of a UK plug fuse: preferred ratings and highest rating in A, highest voltage in V, length and diameter in mm.
 * Source: BS 1362, scope, markings and dimensions.
 */
export const plugFuseFigures = calculation({
  id: 'plug-fuse-figures',
  title: 'Ratings and size of a UK plug fuse',
  topic: 'plug-fuses',
  formula: 'figures of BS 1362',
  inputs: { standard: optional(choice('standard', ['BS 1362'])) },
  outputs: { preferred_ratings: 'A', highest_rating: 'A', max_voltage: 'V', length: 'mm', diameter: 'mm' },
  sources: ['plugFuse'],
  validity: 'Fuses marked BS 1362 for UK plugs; other cartridge fuses of like size are not the same and must not be used in a plug.',
  regionDependence: 'UK plugs only',
  caution: 'plug',
  checks: [
    { name: 'preferred plug fuse ratings', keys: { ratings_A: 'preferred_ratings' } },
    { name: 'highest plug fuse rating', keys: { rating_A: 'highest_rating' } },
    'plug fuse size',
  ],
  work() {
    return {
      result: { preferred_ratings: [3, 13], highest_rating: 13, max_voltage: 250, length: 25.4, diameter: 6.3 },
      steps: [
        `Preferred ratings: ${put(3, 'A')} and ${put(13, 'A')}. Others are made: 1, 2, 5, 7 and ${put(10, 'A')}. None is above ${put(13, 'A')}.`,
        `For supplies of up to ${put(250, 'V')}. Size: ${put(25.4, 'mm')} long, end caps ${put(6.3, 'mm')} across.`,
        'Never put foil, wire or a longer fuse in its place: the flex can then burn before anything cuts off.',
      ],
    };
  },
});
