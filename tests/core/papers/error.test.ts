import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { likelyMarks, standardError } from '../../../src/core/papers/error.js';

const marks = fc.integer({ min: 2, max: 100 }).chain((of) => fc.record({ of: fc.constant(of), right: fc.integer({ min: 0, max: of }) }));

/** Chances of 0, 1, 2 ... right of so many, each right with chance p: built up one question at a time. */
function binomial(of: number, p: number): number[] {
  let chances = [1];
  for (let n = 0; n < of; n += 1)
    chances = [...chances, 0].map((chance, right) => chance * (1 - p) + (right === 0 ? 0 : (chances[right - 1] ?? 0) * p));
  return chances;
}

// Lord's formula, sqrt(x (n - x) / (n - 1)), worked by hand.
describe('the standard error of a mark', () => {
  it.each([
    [10, 20, 2.2942], // 10 × 10 / 19 = 100 / 19
    [19, 26, 2.3065], // 19 × 7 / 25 = 133 / 25
    [15, 20, 1.9868], // 15 × 5 / 19 = 75 / 19
    [22, 30, 2.4635], // 22 × 8 / 29 = 176 / 29
    [30, 40, 2.7735], // 30 × 10 / 39 = 300 / 39
    [1, 20, 1], // 1 × 19 / 19
    [1, 2, 1], // 1 × 1 / 1
    [0, 20, 0],
    [20, 20, 0],
    [0, 2, 0],
  ])('of %d of %d is %d', (right, of, expected) => {
    expect(standardError(right, of)).toBeCloseTo(expected, 4);
  });

  it('is the same for as many wrong as right', () => {
    fc.assert(
      fc.property(marks, ({ right, of }) => {
        expect(standardError(right, of)).toBe(standardError(of - right, of));
      }),
      { seed: 20261126, numRuns: 300 },
    );
  });

  it('squared is on the average the spread of a binomial count, n p (1 - p), which is what its n - 1 is for', () => {
    for (const of of [2, 20, 26, 40]) {
      for (const p of [0.1, 0.5, 0.73, 0.95]) {
        const mean = binomial(of, p).reduce((sum, chance, right) => sum + chance * standardError(right, of) ** 2, 0);
        expect(mean).toBeCloseTo(of * p * (1 - p), 9);
      }
    }
  });

  it.each([
    [-1, 20],
    [21, 20],
    [1.5, 20],
    [10, 20.5],
    [1, 1],
    [0, 0],
    [0, -2],
    [Number.NaN, 20],
    [10, Number.NaN],
    [10, Number.POSITIVE_INFINITY],
  ])('of %d of %d is refused', (right, of) => {
    expect(() => standardError(right, of)).toThrow(RangeError);
    expect(() => likelyMarks(right, of)).toThrow(RangeError);
  });
});

describe('likely marks', () => {
  it.each([
    [10, 20, 8, 12], // 2.29 is 2
    [19, 26, 17, 21], // 2.31 is 2
    [30, 40, 27, 33], // 2.77 is 3
    [2, 20, 1, 3], // 36 / 19, 1.38 is 1
    [25, 26, 24, 26], // 25 × 1 / 25 = 1
    [1, 2, 0, 2],
    [0, 20, 0, 1],
    [20, 20, 19, 20],
    [0, 2, 0, 1],
    [2, 2, 1, 2],
  ])('of %d of %d go from %d to %d', (right, of, low, high) => {
    expect(likelyMarks(right, of)).toEqual({ low, high });
  });

  it('hold the mark itself and another one, and stay between none and all', () => {
    fc.assert(
      fc.property(marks, ({ right, of }) => {
        const { low, high } = likelyMarks(right, of);
        expect([low, right, high, of]).toEqual([low, right, high, of].sort((a, b) => a - b));
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high - low).toBeGreaterThanOrEqual(1);
        expect([low, high].every(Number.isInteger)).toBe(true);
      }),
      { seed: 20261126, numRuns: 500 },
    );
  });

  it('hold about two of three further papers of somebody who knows as much as the mark says', () => {
    // Summed from the binomial distribution. Rounding takes half a mark from the error or adds one, and a whole mark reaches half a mark
    // further, so that the range is from 1 to 1.5 standard errors wide each way where the error is 2 or more: 68 to 87 % of a normal curve.
    for (const of of [20, 26, 30, 40]) {
      for (let right = Math.ceil(of / 4); right <= (of * 3) / 4; right += 1) {
        const { low, high } = likelyMarks(right, of);
        const inside = binomial(of, right / of)
          .slice(low, high + 1)
          .reduce((sum, chance) => sum + chance, 0);
        expect(inside).toBeGreaterThan(2 / 3);
        expect(inside).toBeLessThan(0.87);
      }
    }
  });
});
