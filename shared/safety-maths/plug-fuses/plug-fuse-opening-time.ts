import { calculation } from '../calculation.js';
import { CalculationInputError, quantity } from '../inputs.js';
import { put } from '../working.js';
import { timeWindows } from './plug-fuse-table.js';

/**
 * How long a UK plug fuse may take to open at a current far above its rating. Rating and current in A; shortest and longest time in s,
 * the shortest null where none is set. Only the standard's own points are known; others are refused. Source: BS 1362, time/current zones.
 */
export const plugFuseOpeningTime = calculation({
  id: 'plug-fuse-opening-time',
  title: 'How long a plug fuse takes to open',
  topic: 'plug-fuses',
  formula: 'time/current zones of BS 1362',
  inputs: {
    rating: quantity('rating of the fuse', 'A', { min: 3, max: 13 }),
    current: quantity('current through it', 'A', { min: 9, max: 100 }),
  },
  outputs: { time_min: 's', time_max: 's' },
  sources: ['plugFuse'],
  validity: 'New 3 A and 13 A fuses marked BS 1362, at the currents the standard sets; in between, the time lies between its neighbours.',
  regionDependence: 'UK plugs only',
  caution: 'plug',
  checks: ['plug fuse operating-time window'],
  work({ rating, current }) {
    const ofRating = timeWindows.filter((window) => window.rating === rating);
    if (ofRating.length === 0)
      throw new CalculationInputError('rating', `the standard sets no times for ${put(rating, 'A')}; give 3 A or 13 A`);
    const window = ofRating.find((one) => one.current === current);
    if (window === undefined)
      throw new CalculationInputError(
        'current',
        `no time is set for ${put(current, 'A')}; give one of: ${ofRating.map((one) => put(one.current, 'A')).join(', ')}`,
      );
    return {
      result: { time_min: window.least, time_max: window.most },
      steps: [
        `At ${put(current, 'A')} a ${put(rating, 'A')} fuse must open within ${put(window.most, 's')}.`,
        window.least === null ? 'No shortest time is set.' : `It must hold for at least ${put(window.least, 's')}.`,
        'A dangerous shock can kill in far less time than a fuse takes: a fuse does not guard a person.',
      ],
    };
  },
});
