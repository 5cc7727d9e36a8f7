/** The Wilson score interval for a share: honest for small counts and near 0 and 1 (Wilson 1927). */

/** The 97.5 % point of the normal distribution. */
const z = 1.9599639845400543;

/**
 * @param right how many of `of`
 * @returns the 95 % interval; null when nothing was counted
 * @throws RangeError unless 0 <= right <= of, both whole
 */
export function wilsonInterval(right: number, of: number): { low: number; high: number } | null {
  if (!Number.isInteger(right) || !Number.isInteger(of) || right < 0 || right > of) throw new RangeError(`${right} of ${of} is no share`);
  if (of === 0) return null;
  const centre = (right + z ** 2 / 2) / (of + z ** 2);
  const half = (z / (of + z ** 2)) * Math.sqrt((right * (of - right)) / of + z ** 2 / 4);
  return { low: right === 0 ? 0 : centre - half, high: right === of ? 1 : centre + half };
}
