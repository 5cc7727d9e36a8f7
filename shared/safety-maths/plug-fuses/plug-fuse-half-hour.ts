import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';
import { checkMade } from './plug-fuse-table.js';

/**
 * What a plug fuse carries for at least half an hour, 1.6 × its rating, and what blows it within half an hour, 1.9 × its rating.
 * Rating and currents in A. Source: BS 1362, conventional non-fusing and fusing current.
 */
export const plugFuseHalfHour = calculation({
  id: 'plug-fuse-half-hour',
  title: 'What a plug fuse carries, and what blows it',
  topic: 'plug-fuses',
  formula: 'I_carried = 1.6 × I_fuse',
  inputs: { rating: quantity('rating of the fuse', 'A', { min: 1, max: 13 }) },
  outputs: { carried_current: 'A', blowing_current: 'A' },
  sources: ['plugFuse'],
  validity: 'Fuses marked BS 1362, over half an hour; between the two currents a fuse may blow or not, and far above them it blows sooner.',
  foundBy: ['overload', 'when does a fuse blow', 'fusing current', 'fuse factor', 'fuse does not blow'],
  regionDependence: 'UK plugs only',
  caution: 'plug',
  checks: [
    { name: 'conventional non-fusing current (carried at least 30 min)', keys: { current_A: 'carried_current' } },
    { name: 'conventional fusing current (blows within 30 min)', keys: { current_A: 'blowing_current' } },
  ],
  work({ rating }) {
    checkMade(rating);
    // Times 16 and 19 tenths, so that 24.7 A comes out as printed.
    const [carried, blowing] = [(rating * 16) / 10, (rating * 19) / 10];
    return {
      result: { carried_current: carried, blowing_current: blowing },
      steps: [
        `Carried for half an hour at least: I_carried = 1.6 × I_fuse = 1.6 × ${put(rating, 'A')} = ${out(carried, 'A')}`,
        `Blows within half an hour: I_blowing = 1.9 × I_fuse = 1.9 × ${put(rating, 'A')} = ${out(blowing, 'A')}`,
        'So a fuse guards the flex against fire. It is no fine limit, and it does not guard a person against shock.',
      ],
    };
  },
});
