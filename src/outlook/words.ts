/** Chances in plain words. */

/** "about 7 to 9 of 10 people who answer like you would pass": tenths, never none and never all. */
export function tenths(low: number, high: number): string {
  const [from, to] = [low, high].map((chance) => Math.min(10, Math.max(0, Math.round(chance * 10)))) as [number, number];
  if (to === 0) return 'fewer than 1 of 10';
  if (from === 10) return 'more than 9 of 10';
  if (from === to) return `about ${from} of 10`;
  return from === 0 ? `at most ${to} of 10` : `about ${from} to ${to} of 10`;
}

/**
 * What may be told of a chance. The model's own doubt is not all: in the scheduling study learners who were told 80 to 95 % passed
 * less often than that, so nothing above these limits is said, and no range is narrower than a tenth at the top.
 */
export function shownRange({ low, high }: { low: number; high: number }): { low: number; high: number } {
  const top = Math.min(high, highestTold);
  return { low: Math.min(low, highestTold - 0.1), high: top };
}

const highestTold = 0.94;

export const percent = (chance: number): string => `${Math.min(99, Math.max(1, Math.round(chance * 100)))} %`;
