/** Chances in plain words. */

/** "about 7 to 9 of 10 people who answer like you would pass": tenths, never none and never all. */
export function tenths(low: number, high: number): string {
  const [from, to] = [low, high].map((chance) => Math.min(10, Math.max(0, Math.round(chance * 10)))) as [number, number];
  if (to === 0) return 'fewer than 1 of 10';
  if (from === 10) return 'more than 9 of 10';
  if (from === to) return `about ${from} of 10`;
  return from === 0 ? `at most ${to} of 10` : `about ${from} to ${to} of 10`;
}

export const percent = (chance: number): string => `${Math.min(99, Math.max(1, Math.round(chance * 100)))} %`;
