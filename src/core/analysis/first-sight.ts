/**
 * How well people do with the rest, held against what they chose at first sight of one question.
 *
 * In practice nobody answers everything, so there is no total to hold a question against. "The rest" is instead a person's share right
 * over the first answers to the other questions, and it counts from ten others on; both are ours, no source. People who answered alike
 * come as one group, so that a club's whole record need not be carried about: means and variances of groups give the correlation exactly.
 */

/** With fewer other questions a share says little of anybody: of ten, half of them right, it is known to about 30 points either way. */
export const fewestOthers = 10;

/** People who answered alike, and the shares that they had right of the other questions, from 0 to 1. */
export interface RestGroup {
  people: number;
  mean: number;
  /** With the number of people as divisor. */
  variance: number;
  least: number;
  most: number;
}

/** What differs from 1 by no more than the rounding of its own sums is 1. */
const rounding = 4e-15;

/**
 * Pearson's r of having chosen something (1) or anything else (0) with the rest: the point-biserial correlation,
 * (mean of those inside less mean of all) / (standard deviation of all) · √(people inside / people outside).
 * @param inside those who chose it; they are among `all`
 * @returns between -1 and 1; null when nobody is inside or nobody outside, or the rest is the same for everybody
 */
export function correlationWithRest(inside: RestGroup | null, all: RestGroup | null): number | null {
  if (inside === null || all === null || inside.people === all.people || all.least === all.most) return null;
  const r = ((inside.mean - all.mean) / Math.sqrt(all.variance)) * Math.sqrt(inside.people / (all.people - inside.people));
  return Math.abs(r) > 1 - rounding ? Math.sign(r) : r;
}

/** Several groups as one; null for nobody. */
export function pooled(groups: readonly RestGroup[]): RestGroup | null {
  let [people, sum, least, most] = [0, 0, Infinity, -Infinity];
  for (const group of groups) {
    people += group.people;
    sum += group.people * group.mean;
    least = Math.min(least, group.least);
    most = Math.max(most, group.most);
  }
  if (people === 0) return null;
  const mean = sum / people;
  const squares = groups.reduce((total, group) => total + group.people * (group.variance + (group.mean - mean) ** 2), 0);
  return { people, mean, variance: squares / people, least, most };
}

/** The chance that somebody who knows nothing has it all right, where the number of ways to answer tells it. */
export function chanceOf(kind: string, parts: number): number {
  switch (kind) {
    case 'several':
      return 0.5 ** parts;
    // Steps that may change places, and right-hand texts that serve twice, make it likelier; it is the least it can be.
    case 'order':
      return 1 / factorial(parts);
    case 'pairs':
      return parts ** -parts;
    // A number that is typed is not hit by luck; otherwise one of so many options.
    default:
      return parts === 0 ? 0 : 1 / parts;
  }
}

const factorial = (n: number): number => (n < 2 ? 1 : n * factorial(n - 1));
