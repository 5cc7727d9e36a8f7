/**
 * Seeded chance. The same seed gives the same numbers on every machine and in every later version:
 * draws and option orders that people have seen must be repeatable, so this file must never change its output.
 *
 * Generator: mulberry32 (public domain), seeded through the 32-bit FNV-1a hash of a text.
 */
export interface Random {
  /** A number in [0, 1). */
  next(): number;
  /** A whole number from 0 to n - 1; n at least 1. */
  below(n: number): number;
}

/** FNV-1a, 32 bits, over UTF-16 code units. */
export function hashText(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) {
    hash ^= text.charCodeAt(i);
    hash = Math.imul(hash, 0x01000193);
  }
  return hash >>> 0;
}

/** A generator for a seed; texts and numbers are both taken, `randomFrom(7)` equals `randomFrom('7')`. */
export function randomFrom(seed: string | number): Random {
  let state = hashText(String(seed));
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return { next, below: (n) => Math.floor(next() * n) };
}

/** Fisher and Yates: a shuffled copy; the input stays as it was. */
export function shuffled<T>(items: readonly T[], random: Random): T[] {
  const copy = [...items];
  for (let i = copy.length - 1; i > 0; i -= 1) {
    const j = random.below(i + 1);
    [copy[i], copy[j]] = [copy[j] as T, copy[i] as T];
  }
  return copy;
}
