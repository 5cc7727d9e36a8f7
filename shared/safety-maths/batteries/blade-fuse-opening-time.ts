import { calculation } from '../calculation.js';
import { CalculationInputError, quantity } from '../inputs.js';
import { put } from '../working.js';
import { bladeTimes } from './blade-fuse-table.js';

/**
 * How long a blade fuse (type C) may take to open at a load above its rating. Load in % of the rating; shortest and longest time in s, null
 * where none is set. Only the standard's own points are known; others are refused. Source: ISO 8820-3, from memory.
 */
export const bladeFuseOpeningTime = calculation({
  id: 'blade-fuse-opening-time',
  title: 'How long a blade fuse takes to open',
  topic: 'batteries',
  formula: 'operating times of ISO 8820-3',
  inputs: { percent_of_rating: quantity('current, of the rating', '%', { min: 110, max: 600 }) },
  outputs: { time_min: 's', time_max: 's' },
  sources: ['bladeFuse'],
  validity: 'New blade fuses of type C at room temperature, at the loads the standard sets; a hot place opens a fuse sooner.',
  caution: 'battery',
  checks: ['blade fuse operating time (type C)'],
  work({ percent_of_rating: percent }) {
    const row = bladeTimes.find((one) => one.percent === percent);
    if (row === undefined)
      throw new CalculationInputError(
        'percent_of_rating',
        `no time is set for ${put(percent, '%')}; give one of: ${bladeTimes.map((one) => one.percent).join(', ')} %`,
      );
    return {
      result: { time_min: row.least, time_max: row.most },
      steps: [
        row.least === null
          ? `At ${put(percent, '%')} of its rating no shortest time is given here.`
          : `At ${put(percent, '%')} of its rating it holds for at least ${put(row.least, 's')}.`,
        row.most === null ? 'No longest time is set: it may never open.' : `It must open within ${put(row.most, 's')}.`,
        'A small overload heats the cable for a long time, so the cable must stand more than the fuse.',
      ],
    };
  },
});
