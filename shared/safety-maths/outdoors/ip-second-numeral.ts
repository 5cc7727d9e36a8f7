import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { put } from '../working.js';
import { rowOfNumeral, waters } from './ip-code-table.js';

/**
 * What water the second numeral of an IP code stands; for 7 also the test: depth in m and time in min, null for all others.
 * Source: IEC 60529.
 */
export const ipSecondNumeral = calculation({
  id: 'ip-second-numeral',
  title: 'Second numeral of an IP code',
  topic: 'outdoors',
  formula: 'table of IEC 60529',
  inputs: { numeral: quantity('second numeral', '', { min: 0, max: 9 }) },
  outputs: { protection: null, depth: 'm', time: 'min' },
  sources: ['ipCode'],
  validity: 'New, closed and undamaged enclosures in fresh water; from 7 on, a numeral does not take in the jets of 5 and 6.',
  caution: 'mains',
  checks: ['meaning of the second IP numeral', { name: 'immersion test of IPX7', inputs: { numeral: 7 } }],
  work({ numeral }) {
    const protection = rowOfNumeral(waters, numeral);
    const dipped = numeral === 7;
    return {
      result: { protection, depth: dipped ? 1 : null, time: dipped ? 30 : null },
      steps: [
        numeral === 0 ? 'Second numeral 0: no protection against water.' : `Second numeral ${put(numeral, '')}: stands ${protection}.`,
        dipped
          ? `The test: ${put(1, 'm')} under water for ${put(30, 'min')}.`
          : numeral < 4
            ? 'Not for use in the open: it takes 4 or more to stand splashes from all sides.'
            : 'A plug and socket only count when joined as the maker says.',
        'Keep connections off wet ground whatever the code.',
      ],
    };
  },
});
