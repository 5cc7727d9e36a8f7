/** How many signs of trouble sound questions show by chance, so that nobody hunts for faults that are none. */

/**
 * For classes of this size: the share of sound questions that show a correlation below 0.20, and below 0. Drawn 2000 times from 1248
 * people and 16 questions, all of which have 0.30 or more among all of them.
 */
const rates = [
  { n: 5, below20: 0.23, below0: 0.14 },
  { n: 10, below20: 0.19, below0: 0.08 },
  { n: 15, below20: 0.15, below0: 0.05 },
  { n: 20, below20: 0.12, below0: 0.03 },
  { n: 30, below20: 0.08, below0: 0.01 },
  { n: 50, below20: 0.04, below0: 0.002 },
  { n: 100, below20: 0.01, below0: 0 },
  { n: 200, below20: 0.003, below0: 0 },
] as const;

/**
 * By the rate of the next smaller class in the table, which is the higher one.
 * @returns numbers of questions, on average; null below five candidates
 */
export function expectedByChance(n: number, questions: number): { below20: number; below0: number } | null {
  const rate = rates.filter((row) => row.n <= n).at(-1);
  return rate === undefined ? null : { below20: questions * rate.below20, below0: questions * rate.below0 };
}
