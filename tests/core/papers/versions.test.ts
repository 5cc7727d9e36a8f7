import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { versionItems } from '../../../src/core/papers/versions.js';
import { randomFrom, type Random } from '../../../src/core/random.js';

const seedOf = (questionId: number, random: Random): number => questionId * 1_000_000 + random.below(1_000_000);
const ids = (questions: readonly number[], version: number, seed: string | number): number[] =>
  versionItems(questions, version, randomFrom(seed), seedOf).map(({ questionId }) => questionId);
const questionLists = fc.uniqueArray(fc.integer({ min: 1, max: 5000 }), { maxLength: 60 });
const versions = fc.integer({ min: 1, max: 26 });

describe('the versions of a paper', () => {
  it('keep the order of the syllabus in the first', () => {
    fc.assert(
      fc.property(questionLists, fc.integer(), (questions, seed) => {
        expect(ids(questions, 1, seed)).toEqual(questions);
      }),
      { seed: 20261126, numRuns: 200 },
    );
  });

  it('all hold the same questions, each once', () => {
    const sorted = (list: readonly number[]): number[] => [...list].sort((a, b) => a - b);
    fc.assert(
      fc.property(questionLists, versions, fc.integer(), (questions, version, seed) => {
        const before = [...questions];
        expect(sorted(ids(questions, version, seed))).toEqual(sorted(questions));
        expect(questions).toEqual(before);
      }),
      { seed: 20261126, numRuns: 300 },
    );
  });

  it('come out the same for the same chance, seeds and all', () => {
    const made = () => versionItems([4, 8, 15, 16, 23, 42], 2, randomFrom('paper 7 version 2'), seedOf);
    expect(made()).toEqual(made());
  });

  it('are all in different orders after the first', () => {
    // Twenty questions have more than 2 × 10^18 orders.
    const questions = Array.from({ length: 20 }, (_, index) => index + 1);
    const orders = Array.from({ length: 26 }, (_, index) => ids(questions, index + 1, `version ${index + 1}`).join());
    expect(new Set(orders).size).toBe(26);
  });

  it('bring every order of three questions equally often, but for the first', () => {
    // 6,000 papers, 6 orders: 1,000 each, with a standard deviation of sqrt(6,000 × 1/6 × 5/6) = 28.9; four of them are 116.
    const random = randomFrom('orders');
    const found = new Map<string, number>();
    for (let n = 0; n < 6000; n += 1) {
      const order = versionItems([1, 2, 3], 2, random, () => 0)
        .map(({ questionId }) => questionId)
        .join('');
      found.set(order, (found.get(order) ?? 0) + 1);
    }
    expect([...found.keys()].sort()).toEqual(['123', '132', '213', '231', '312', '321']);
    for (const count of found.values()) expect(Math.abs(count - 1000)).toBeLessThan(116);
  });

  it('ask a seed for each question once, and keep it with that question', () => {
    for (const version of [1, 2, 9]) {
      const asked: number[] = [];
      const items = versionItems([30, 10, 20], version, randomFrom(version), (questionId) => {
        asked.push(questionId);
        return questionId + 7;
      });
      expect(asked).toEqual(items.map(({ questionId }) => questionId));
      expect(items.every(({ questionId, seed }) => seed === questionId + 7)).toBe(true);
    }
  });

  it('have other numbers in each version', () => {
    const questions = [1, 2, 3, 4, 5];
    const seeds = Array.from({ length: 10 }, (_, index) => versionItems(questions, index + 1, randomFrom(index + 1), seedOf)).flatMap(
      (items) => items.map(({ seed }) => seed),
    );
    // 50 draws out of a million for each question: a fixed seed, and no two the same.
    expect(new Set(seeds).size).toBe(50);
  });

  it('of no questions are empty', () => {
    expect([1, 2].map((version) => ids([], version, 1))).toEqual([[], []]);
  });
});
