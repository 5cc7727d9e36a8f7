/** Chances in plain words. */

interface Range {
  low: number;
  high: number;
}

/**
 * What may be told of a chance. The model's own doubt is not all: in the scheduling study learners who were told 80 to 95 % passed
 * less often than that, so nothing above these limits is said. They are our own judgement (no source).
 */
export const shownRange = ({ low, high }: Range): Range => ({ low: Math.min(low, told.low), high: Math.min(high, told.high) });

const told = { low: 0.84, high: 0.94 } as const;

/** "about 7 to 9 of 10 people who answer like you would pass": tenths, never none and never all. */
export function tenths(range: Range): string {
  const { low, high } = shownRange(range);
  const [from, to] = [Math.round(low * 10), Math.round(high * 10)];
  if (to === 0) return 'fewer than 1 of 10';
  if (from === to) return `about ${from} of 10`;
  return from === 0 ? `at most ${to} of 10` : `about ${from} to ${to} of 10`;
}

export const percent = (chance: number): string => `${Math.min(99, Math.max(1, Math.round(chance * 100)))} %`;
