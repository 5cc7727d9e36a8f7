import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultWeights, memoryModel, type Memory, type Rating } from '../../src/core/memory.js';

interface Vectors {
  meta: {
    weights: Record<string, number[]>;
    tolerance: { stabilityRelative: number; difficultyAbsolute: number; retrievabilityAbsolute: number };
  };
  cases: {
    id: string;
    weights: string;
    reviews: {
      rating: Rating;
      gapDays: number;
      retrievabilityBefore: number | null;
      stability: number;
      difficulty: number;
      retrievabilityAfter: Record<string, number>;
    }[];
  }[];
}
// Source: computed by the Rust implementation of FSRS-6 (float32), an implementation independent of the one used here.
const vectors = JSON.parse(readFileSync(new URL('../data/fsrs-vectors.json', import.meta.url), 'utf8')) as Vectors;

describe('memory against the independent reference vectors', () => {
  it('has the 45 histories', () => {
    expect(vectors.cases).toHaveLength(45);
  });

  it.each(vectors.cases.map((c) => [c.id, c] as const))('agrees on history %s', (_id, history) => {
    const model = memoryModel(vectors.meta.weights[history.weights]);
    const { stabilityRelative, difficultyAbsolute, retrievabilityAbsolute } = vectors.meta.tolerance;
    let memory: Memory | null = null;
    let day = 20_000;
    for (const review of history.reviews) {
      day += review.gapDays;
      if (memory !== null && review.retrievabilityBefore !== null) {
        expect(Math.abs(model.recall(memory, day) - review.retrievabilityBefore)).toBeLessThan(retrievabilityAbsolute);
      }
      memory = model.after(memory, day, review.rating);
      expect(Math.abs(memory.stability / review.stability - 1)).toBeLessThan(stabilityRelative);
      expect(Math.abs(memory.difficulty - review.difficulty)).toBeLessThan(difficultyAbsolute);
      for (const [name, expected] of Object.entries(review.retrievabilityAfter)) {
        expect(Math.abs(model.recall(memory, day + Number(name.slice(1))) - expected)).toBeLessThan(retrievabilityAbsolute);
      }
    }
  });
});

describe('due days', () => {
  const model = memoryModel();

  it('first intervals are 1, 1, 2 and 8 days, as the published default weights give', () => {
    // Published default first stabilities: 0.212, 1.2931, 2.3065, 8.2956 days; at 0.9 the interval is the stability, rounded, at least 1.
    const intervals = ([1, 2, 3, 4] as const).map((rating) => model.dueDay(model.after(null, 100, rating)) - 100);
    expect(intervals).toEqual([1, 1, 2, 8]);
  });

  it('a lower wanted recall waits longer', () => {
    const memory = model.after(null, 100, 3);
    expect(model.dueDay(memory, 0.8)).toBeGreaterThan(model.dueDay(memory, 0.9));
  });
});

describe('guards', () => {
  it('refuses a wrong number of weights, instead of taking the defaults in silence', () => {
    expect(() => memoryModel([1, 2, 3])).toThrow(RangeError);
  });

  it('refuses a weight that is no number or out of range, instead of repairing it in silence', () => {
    const broken = [...defaultWeights];
    broken[3] = Number.NaN;
    expect(() => memoryModel(broken)).toThrow(RangeError);
    broken[3] = 9999;
    expect(() => memoryModel(broken)).toThrow(/weight 3/);
  });

  it('takes a day that lies before the last one as the same day', () => {
    const model = memoryModel();
    const memory = model.after(null, 100, 3);
    expect(model.recall(memory, 90)).toBe(1);
    expect(model.after(memory, 90, 3).stability).toBe(model.after(memory, 100, 3).stability);
  });

  it('keeps every sequence of answers within the limits that the database checks', () => {
    const model = memoryModel();
    const step = fc.record({ gap: fc.integer({ min: 0, max: 4000 }), rating: fc.constantFrom<Rating>(1, 2, 3, 4) });
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 60 }), (steps) => {
        let memory: Memory | null = null;
        let day = 0;
        for (const { gap, rating } of steps) {
          day += gap;
          memory = model.after(memory, day, rating);
          expect(memory.stability).toBeGreaterThanOrEqual(0.001);
          expect(memory.stability).toBeLessThanOrEqual(36_500);
          expect(memory.difficulty).toBeGreaterThanOrEqual(1);
          expect(memory.difficulty).toBeLessThanOrEqual(10);
          expect(model.dueDay(memory)).toBeGreaterThan(day);
        }
      }),
      { seed: 20261125, numRuns: 200 },
    );
  });
});
