import type { Interval } from './correlation.js';

/** Figures of an analysis as pages and commands print them. */

/** Two places and a true minus: −0.48. What rounds to nought has no sign. */
export function twoPlaces(value: number): string {
  const text = Math.abs(value).toFixed(2);
  return value < 0 && text !== '0.00' ? `−${text}` : text;
}

/** −0.70 to −0.17 */
export const intervalWords = ({ low, high }: Interval): string => `${twoPlaces(low)} to ${twoPlaces(high)}`;

/** 39 % */
export const percentWords = (share: number): string => `${Math.round(share * 100)} %`;

/** 39 % to 78 % */
export const shareWords = ({ low, high }: Interval): string => `${percentWords(low)} to ${percentWords(high)}`;

/** `A`, `A and B`, `A, B and C`. */
export function listed(names: readonly string[]): string {
  const [last, ...before] = [...names].reverse();
  return before.length === 0 ? (last ?? '') : `${before.reverse().join(', ')} and ${last ?? ''}`;
}
