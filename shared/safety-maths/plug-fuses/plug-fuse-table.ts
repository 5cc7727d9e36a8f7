import { CalculationInputError } from '../inputs.js';
import { put } from '../working.js';

/** Ratings that are made, A. Source: BS 1362. */
const made: readonly number[] = [1, 2, 3, 5, 7, 10, 13];

/** Throws CalculationInputError when no plug fuse of that rating in A is made. */
export function checkMade(rating: number): void {
  if (!made.includes(rating))
    throw new CalculationInputError('rating', `no plug fuse of ${put(rating, 'A')} is made; give one of: ${made.join(', ')} A`);
}

/** Times within which a fuse must open, s; least null where the standard sets none. */
export interface TimeWindow {
  readonly rating: number;
  readonly current: number;
  readonly least: number | null;
  readonly most: number;
}

/** The points that the standard sets, for 3 A and 13 A only. Source: BS 1362, time/current zones, as other pages quote them. */
export const timeWindows: readonly TimeWindow[] = [
  { rating: 3, current: 9, least: 0.02, most: 80 },
  { rating: 3, current: 20, least: null, most: 0.1 },
  { rating: 3, current: 30, least: null, most: 0.03 },
  { rating: 13, current: 30, least: 1, most: 400 },
  { rating: 13, current: 50, least: 0.1, most: 20 },
  { rating: 13, current: 100, least: 0.01, most: 0.2 },
];
