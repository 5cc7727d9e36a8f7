/** Hands that a tutor counted: one number for each letter, and nobody's record. */

const mostHands = 999;

/** As typed, box by box. @returns the counts, `[]` where nothing was counted; or why not */
export function readHands(typed: readonly string[]): { ok: true; hands: number[] } | { ok: false; why: string; index: number } {
  const counts: number[] = [];
  for (const [index, text] of typed.entries()) {
    const plain = text.trim();
    if (!/^\d{0,3}$/.test(plain))
      return { ok: false, why: `“${plain.slice(0, 20)}” is no number of hands: write 0 to ${mostHands}.`, index };
    counts.push(plain === '' ? 0 : Number(plain));
  }
  return { ok: true, hands: counts.every((count) => count === 0) ? [] : counts };
}

/** By option: phones and hands together. */
export const together = (phones: readonly number[], hands: readonly number[]): number[] =>
  phones.map((count, index) => count + (hands[index] ?? 0));

export const sum = (counts: readonly number[]): number => counts.reduce((all, count) => all + count, 0);
