import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { put } from '../working.js';
import { rowOfNumeral, solids } from './ip-code-table.js';

/**
 * What the first numeral of an IP code keeps out: the smallest solid thing in mm, null where none is named (0, and 5 and 6, which speak of
 * dust). Source: IEC 60529.
 */
export const ipFirstNumeral = calculation({
  id: 'ip-first-numeral',
  title: 'First numeral of an IP code',
  topic: 'outdoors',
  formula: 'table of IEC 60529',
  inputs: { numeral: quantity('first numeral', '', { min: 0, max: 6 }) },
  outputs: { size: 'mm', kept_out: null },
  sources: ['ipCode'],
  validity: 'New, closed and undamaged enclosures, with the maker’s covers and seals in place.',
  caution: 'mains',
  checks: ['size kept out by the first IP numeral'],
  work({ numeral }) {
    const { size, words } = rowOfNumeral(solids, numeral);
    return {
      result: { size, kept_out: words },
      steps: [
        size === null
          ? `First numeral ${put(numeral, '')}: ${numeral === 0 ? 'nothing is kept out' : `keeps out ${words}`}.`
          : `First numeral ${put(numeral, '')}: keeps out things of ${put(size, 'mm')} and more: ${words}.`,
        numeral < 2 ? 'A finger can reach what is inside.' : 'An opened or cracked enclosure keeps nothing out.',
      ],
    };
  },
});
