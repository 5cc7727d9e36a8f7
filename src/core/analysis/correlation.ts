/** Pearson's correlation and its interval, for marks of 0 and 1 as for totals. */

export interface Interval {
  low: number;
  high: number;
}

/** The 97.5 % point of the normal distribution. */
const z = 1.9599639845400543;

/** What differs from 1 by no more than the rounding of its own sums is 1. */
const rounding = 4e-15;

/**
 * Pearson's r; of a mark of 0 or 1 with a total it is the point-biserial correlation.
 * @returns between -1 and 1; null when either side is the same for everybody, or there are fewer than two
 * @throws RangeError when the two are not equally long
 */
export function pearson(x: readonly number[], y: readonly number[]): number | null {
  if (x.length !== y.length) throw new RangeError(`${x.length} and ${y.length} values do not pair`);
  if (x.length < 2 || isConstant(x) || isConstant(y)) return null;
  const dx = fromMean(x);
  const dy = fromMean(y);
  const r = sumOfProducts(dx, dy) / Math.sqrt(sumOfProducts(dx, dx) * sumOfProducts(dy, dy));
  return Math.abs(r) > 1 - rounding ? Math.sign(r) : r;
}

/**
 * The 95 % interval of a correlation among `n` people by Fisher's transformation, tanh(atanh(r) ∓ z/√(n-3)).
 * For a mark of 0 or 1 it is a rough guide (Baker 1965).
 * @returns null below four people, without a correlation, or when it is 1 or -1
 */
export function fisherInterval(r: number | null, n: number): Interval | null {
  if (r === null || n < 4 || Math.abs(r) >= 1) return null;
  const half = z / Math.sqrt(n - 3);
  return { low: Math.tanh(Math.atanh(r) - half), high: Math.tanh(Math.atanh(r) + half) };
}

function isConstant(values: readonly number[]): boolean {
  return values.every((value) => value === values[0]);
}

function fromMean(values: readonly number[]): number[] {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.map((value) => value - mean);
}

function sumOfProducts(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, index) => sum + value * (b[index] as number), 0);
}
