import type { Interval } from './correlation.js';
import { fQuantile } from './f-quantile.js';

/** How far the marks of a whole paper can be relied on, from how many had each question right and from the totals: KR-20 and what follows. */

export interface PaperFigures {
  /** Candidates. */
  n: number;
  /** Questions. Those that everybody has right or wrong count too. */
  k: number;
  mean: number | null;
  /** Of the totals, with n - 1. */
  sd: number | null;
  /** The same number as Cronbach's alpha. */
  kr20: number | null;
  /** Feldt's 95 % interval (1965). */
  kr20Interval: Interval | null;
  /** Standard error of measurement, in marks, from `sd`. */
  sem: number | null;
}

/**
 * @param rights how many had each question right
 * @param totals marks of each candidate; they sum to the same
 */
export function paperFigures(rights: readonly number[], totals: readonly number[]): PaperFigures {
  const [n, k] = [totals.length, rights.length];
  const sum = totals.reduce((whole, total) => whole + total, 0);
  const kr20 = alphaOf(rights, totals);
  const sd = n < 2 ? null : Math.sqrt(spreadOf(totals) / (n * (n - 1)));
  return {
    n,
    k,
    mean: n === 0 ? null : sum / n,
    sd,
    kr20,
    kr20Interval: kr20 === null ? null : feldtInterval(kr20, n, k),
    sem: sd === null || kr20 === null ? null : sd * Math.sqrt(1 - kr20),
  };
}

/**
 * Kuder and Richardson's formula 20, k/(k-1) (1 - Σ p(1-p) / variance), both with divisor n: in whole numbers until the one division.
 * @returns null below two candidates or questions, and when all totals are the same
 */
export function alphaOf(rights: readonly number[], totals: readonly number[]): number | null {
  const [n, k] = [totals.length, rights.length];
  const spread = spreadOf(totals);
  if (n < 2 || k < 2 || spread === 0) return null;
  const within = rights.reduce((sum, right) => sum + right * (n - right), 0);
  return (k / (k - 1)) * (1 - within / spread);
}

/** n² times the variance with divisor n: whole for whole marks. */
function spreadOf(totals: readonly number[]): number {
  let [sum, squares] = [0, 0];
  for (const total of totals) {
    sum += total;
    squares += total * total;
  }
  return totals.length * squares - sum * sum;
}

/** 1 - (1 - α) F with n - 1 and (n - 1)(k - 1) degrees of freedom (Feldt 1965). */
export function feldtInterval(alpha: number, n: number, k: number): Interval {
  const [d1, d2] = [n - 1, (n - 1) * (k - 1)];
  return { low: 1 - (1 - alpha) * fQuantile(0.975, d1, d2), high: 1 - (1 - alpha) * fQuantile(0.025, d1, d2) };
}
