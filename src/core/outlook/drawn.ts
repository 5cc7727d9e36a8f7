/**
 * How many answers are right on a paper that draws its questions at random, without replacement, within each topic. Exact: a question is
 * drawn with the chance that is left for it, one after the other, and right with its own chance.
 */

export interface DrawnTopic {
  /** Chances of a right answer, one for each question that may be drawn. */
  chances: readonly number[];
  /** How many are drawn; at most as many as there are. */
  drawn: number;
}

/** @returns P(X = k) of right answers among the drawn, for k from 0 to `drawn` */
export function drawnDistribution({ chances, drawn }: DrawnTopic): Float64Array {
  const count = Math.min(drawn, chances.length);
  // state[s][r]: chance that s were drawn so far and r of them are right.
  let state = emptyState(count);
  (state[0] as Float64Array)[0] = 1;
  chances.forEach((chance, index) => {
    const next = emptyState(count);
    for (let s = 0; s <= count; s += 1) {
      const draw = (count - s) / (chances.length - index);
      if (draw < 0 || draw > 1) continue;
      for (let r = 0; r <= s; r += 1) {
        const here = (state[s] as Float64Array)[r] as number;
        if (here === 0) continue;
        add(next, s, r, here * (1 - draw));
        if (s < count) {
          add(next, s + 1, r, here * draw * (1 - chance));
          add(next, s + 1, r + 1, here * draw * chance);
        }
      }
    }
    state = next;
  });
  return state[count] as Float64Array;
}

const emptyState = (count: number): Float64Array[] => Array.from({ length: count + 1 }, () => new Float64Array(count + 1));

function add(state: Float64Array[], s: number, r: number, chance: number): void {
  const row = state[s] as Float64Array;
  row[r] = (row[r] as number) + chance;
}

/** Distribution of a sum of independent counts. */
export function convolved(distributions: readonly Float64Array[]): Float64Array {
  let sum = Float64Array.of(1);
  for (const distribution of distributions) {
    const next = new Float64Array(sum.length + distribution.length - 1);
    sum.forEach((a, i) => distribution.forEach((b, j) => (next[i + j] = (next[i + j] as number) + a * b)));
    sum = next;
  }
  return sum;
}

/** P(X >= least) of a distribution of counts. */
export function tail(distribution: Float64Array, least: number): number {
  if (least <= 0) return 1;
  let sum = 0;
  for (let k = distribution.length - 1; k >= least; k -= 1) sum += distribution[k] as number;
  return Math.min(1, sum);
}

/** The chance of at least `passMark` right answers on a paper drawn from these topics. */
export const passChance = (topics: readonly DrawnTopic[], passMark: number): number =>
  tail(convolved(topics.map(drawnDistribution)), passMark);
