import { CalculationInputError } from '../inputs.js';
import { put } from '../working.js';

/** The IP code of enclosures. Source: IEC 60529, first and second numerals. */

/** By the first numeral: the smallest solid thing kept out in mm (null: none named), and in words. */
export const solids: readonly { readonly size: number | null; readonly words: string }[] = [
  { size: null, words: 'no protection' },
  { size: 50, words: 'the back of a hand' },
  { size: 12.5, words: 'fingers' },
  { size: 2.5, words: 'tools and thick wires' },
  { size: 1, words: 'thin wires' },
  { size: null, words: 'most dust, and thin wires' },
  { size: null, words: 'all dust' },
];

/** By the second numeral: what water it stands. */
export const waters: readonly string[] = [
  'no protection',
  'dripping water',
  'dripping water when tilted up to 15°',
  'spraying water',
  'splashing from any direction',
  'water jets',
  'powerful water jets',
  'temporary immersion',
  'continuous immersion',
  'hot high-pressure jets',
];

/** Every code of two places, X standing for a numeral that is not stated. */
export const ipCodes: readonly string[] = ['0', '1', '2', '3', '4', '5', '6', 'X'].flatMap((first) =>
  ['0', '1', '2', '3', '4', '5', '6', '7', '8', '9', 'X']
    .filter((second) => first + second !== 'XX')
    .map((second) => `IP${first}${second}`),
);

/** The row of a numeral; throws CalculationInputError unless it is whole and in the table. */
export function rowOfNumeral<R>(table: readonly R[], numeral: number): R {
  const row = table[numeral];
  if (row !== undefined) return row;
  throw new CalculationInputError('numeral', `${put(numeral, '')} is no such numeral; give a whole number from 0 to ${table.length - 1}`);
}
