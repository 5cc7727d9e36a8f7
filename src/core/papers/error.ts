/**
 * The standard error of measurement of one candidate's mark, in marks: how far marks on papers of this make-up would scatter for
 * somebody whose knowledge stays the same (binomial error model; Lord 1955, "Estimating test reliability", and 1957, "Do tests of the
 * same length have the same standard errors of measurement?", Educational and Psychological Measurement).
 * @throws RangeError unless 0 <= right <= of, both whole, and of is at least 2
 */
export function standardError(right: number, of: number): number {
  if (!Number.isInteger(right) || !Number.isInteger(of) || of < 2 || right < 0 || right > of)
    throw new RangeError(`${right} of ${of} is no mark`);
  return Math.sqrt((right * (of - right)) / (of - 1));
}

/**
 * One standard error either way, in whole marks: between these about three of four such papers would fall (70 to 84 % by exact binomial
 * sums for marks from a quarter to three quarters of 20 to 40 questions). At none and at all right the formula says 0, which nobody believes;
 * there it is one mark.
 */
export function likelyMarks(right: number, of: number): { low: number; high: number } {
  const error = Math.max(1, Math.round(standardError(right, of)));
  return { low: Math.max(0, right - error), high: Math.min(of, right + error) };
}
