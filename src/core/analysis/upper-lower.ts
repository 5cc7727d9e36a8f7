/** The upper and the lower 27 % by their totals (Kelley 1939), by a rule that does not depend on the order of rows. */

export interface ScoreGroups {
  /** Places in the list of totals. */
  upper: number[];
  lower: number[];
}

/**
 * With 27 % of n, half rounded up and at least 1, as g: everybody at or above the g-th highest total, and everybody at or below the g-th
 * lowest, ties included.
 * @returns null when nobody is there, or the two cuts meet, since then both are the same people
 */
export function scoreGroups(totals: readonly number[]): ScoreGroups | null {
  const n = totals.length;
  const size = Math.max(1, Math.floor((27 * n + 50) / 100));
  const rising = [...totals].sort((a, b) => a - b);
  const [upperCut, lowerCut] = [rising[n - size], rising[size - 1]];
  if (upperCut === undefined || lowerCut === undefined || upperCut <= lowerCut) return null;
  const places = totals.map((_, place) => place);
  return {
    upper: places.filter((place) => (totals[place] as number) >= upperCut),
    lower: places.filter((place) => (totals[place] as number) <= lowerCut),
  };
}

/** The share of right marks in the upper group less that in the lower one. */
export function upperLowerIndex(marks: readonly number[], { upper, lower }: ScoreGroups): number {
  const share = (group: readonly number[]): number => group.reduce((sum, place) => sum + (marks[place] as number), 0) / group.length;
  return share(upper) - share(lower);
}
