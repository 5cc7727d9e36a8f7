/**
 * The chance of at least so many right answers when each question has a chance of its own (Poisson-binomial distribution).
 * Computed by plain convolution, which adds positive numbers only, so that far tails keep their digits.
 */

/**
 * @param chances of a right answer, each 0 to 1
 * @returns P(X = k) for k from 0 to the number of chances
 * @throws RangeError for a chance outside 0 to 1
 */
export function countDistribution(chances: readonly number[]): Float64Array {
  const distribution = new Float64Array(chances.length + 1);
  distribution[0] = 1;
  chances.forEach((chance, done) => {
    if (!(chance >= 0 && chance <= 1)) throw new RangeError(`a chance lies between 0 and 1, and ${chance} does not`);
    for (let k = done + 1; k > 0; k -= 1) {
      distribution[k] = (distribution[k] as number) * (1 - chance) + (distribution[k - 1] as number) * chance;
    }
    distribution[0] = (distribution[0] as number) * (1 - chance);
  });
  return distribution;
}

/**
 * P(X >= least). At or below 0 it is 1; above the number of questions it is 0.
 * @throws RangeError for a chance outside 0 to 1
 */
export function atLeast(chances: readonly number[], least: number): number {
  const distribution = countDistribution(chances);
  if (least <= 0) return 1;
  // From the far end, so that small terms are added first.
  let sum = 0;
  for (let k = chances.length; k >= least; k -= 1) sum += distribution[k] as number;
  return Math.min(1, sum);
}
