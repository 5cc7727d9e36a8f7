import { describe, expect, it } from 'vitest';
import { analyse } from '../../../src/core/analysis/analyse.js';
import { fisherInterval, pearson } from '../../../src/core/analysis/correlation.js';
import { fQuantile } from '../../../src/core/analysis/f-quantile.js';
import { notesOf } from '../../../src/core/analysis/notes.js';
import { feldtInterval } from '../../../src/core/analysis/reliability.js';
import type { Responses } from '../../../src/core/analysis/responses.js';

/** Classes of nobody, one, two and five, worked by hand. */

/** A string a candidate: 1 right, 0 wrong, a space for a blank. */
const marked = (...rows: string[]): Responses => ({
  questions: [...(rows[0] ?? '   ')].map((_, index) => ({ id: `q${index + 1}`, key: null })),
  rows: rows.map((row) => [...row].map((mark) => (mark === ' ' ? null : mark))),
});

const whys = (responses: Responses): string[] =>
  notesOf(analyse(responses)).map(({ question, values, why }) => `${question ?? 'paper'} ${values.join(' ')}: ${why}`);

describe('a class of', () => {
  it('nobody has no figure but its size, and says why', () => {
    const responses: Responses = { ...marked('000'), rows: [] };
    const { paper, questions } = analyse(responses);
    expect(paper).toEqual({ n: 0, k: 3, mean: null, sd: null, kr20: null, kr20Interval: null, sem: null });
    expect(questions[0]).toMatchObject({ n: 0, right: 0, facility: null, facilityInterval: null, itemTotal: null, upperLower27: null });
    expect(whys(responses).slice(0, 3)).toEqual([
      'paper mean: there are no candidates',
      'paper sd: there are no candidates',
      'paper kr20 sem: it takes two candidates or more',
    ]);
    expect(whys(responses)).toContain('q1 facility facilityLow facilityHigh: there are no candidates');
  });

  it('one has a mark and a facility, and nothing that takes two', () => {
    const { paper, questions } = analyse(marked('110'));
    expect(paper).toEqual({ n: 1, k: 3, mean: 2, sd: null, kr20: null, kr20Interval: null, sem: null });
    // Wilson, 1 of 1: 1 / (1 + 3.8415) = 0.2065.
    expect(questions[0]?.facilityInterval?.low).toBeCloseTo(0.2065, 4);
    expect(questions.map(({ facility, itemTotal, alphaIfDropped }) => [facility, itemTotal, alphaIfDropped])).toEqual([
      [1, null, null],
      [1, null, null],
      [0, null, null],
    ]);
  });

  it('two that differ in everything agrees with itself wholly', () => {
    const { paper, questions } = analyse(marked('11', '00'));
    // Σ r (n - r) = 2, n² variance = 2·4 - 2² = 4: KR-20 = 2 (1 - 2/4) = 1; SD = √(4 / 2) = √2; SEM = 0.
    expect(paper).toMatchObject({ n: 2, k: 2, mean: 1, kr20: 1, kr20Interval: { low: 1, high: 1 }, sem: 0 });
    expect(paper.sd).toBeCloseTo(Math.SQRT2, 12);
    expect(questions[0]).toMatchObject({ itemTotal: 1, itemRest: 1, itemRestInterval: null, upperLower27: 1, alphaIfDropped: null });
    expect(whys(marked('11', '00'))).toEqual([
      'q1 alphaIfDropped: it takes three questions or more',
      'q2 alphaIfDropped: it takes three questions or more',
    ]);
  });

  it('five gives the figures of exact fractions', () => {
    const { paper, questions } = analyse(marked('111', '110', '100', '100', '000'));
    // Rights 4, 2, 1; totals 3, 2, 1, 1, 0. n² variance = 5·15 - 7² = 26; Σ r (n - r) = 4 + 6 + 4 = 14.
    expect(paper.mean).toBeCloseTo(7 / 5, 12);
    expect(paper.sd).toBeCloseTo(Math.sqrt(26 / 20), 12);
    expect(paper.kr20).toBeCloseTo((3 / 2) * (1 - 14 / 26), 12);
    expect(paper.sem).toBeCloseTo(Math.sqrt((26 / 20) * (4 / 13)), 12);
    // Question 3: marks 1 0 0 0 0 beside 2 2 1 1 0: (5·2 - 1·6) / √(4·14). Without it: 2 (1 - 10/14).
    expect(questions[2]?.itemRest).toBeCloseTo(4 / Math.sqrt(56), 12);
    expect(questions[2]?.alphaIfDropped).toBeCloseTo(4 / 7, 12);
    // 27 % of 5 is one person at each end: the first and the last.
    expect(questions.map(({ upperLower27 }) => upperLower27)).toEqual([1, 1, 1]);
  });

  it('five that are all right, or all wrong, has facilities and nothing that takes a difference', () => {
    for (const [row, facility, why] of [
      ['111', 1, 'everybody is right'],
      ['000', 0, 'nobody is right'],
    ] as const) {
      const { paper, questions } = analyse(marked(row, row, row, row, row));
      expect(paper).toMatchObject({ mean: 3 * facility, sd: 0, kr20: null, sem: null });
      for (const question of questions)
        expect(question).toMatchObject({ facility, itemTotal: null, itemRest: null, upperLower27: null, alphaIfDropped: null });
      expect(whys(marked(row, row, row, row, row)).slice(0, 4)).toEqual([
        'paper kr20 sem: all totals are the same',
        `q1 itemTotal itemRest: ${why}`,
        'q1 upperLower27: the upper and the lower group are the same people',
        'q1 alphaIfDropped: without this question all totals are the same',
      ]);
    }
  });

  it('five with empty cells counts a blank as wrong and everybody as asked', () => {
    const blanks = analyse(marked('11 ', '1 0', '   ', '100', '011'));
    const wrongs = analyse(marked('110', '100', '000', '100', '011'));
    expect(blanks).toEqual(wrongs);
    expect(blanks.questions.map(({ n, right }) => [n, right])).toEqual([
      [5, 3],
      [5, 2],
      [5, 1],
    ]);
  });

  it('five with one question has no reliability', () => {
    expect(analyse(marked('1', '1', '0', '0', '0')).paper).toMatchObject({ k: 1, kr20: null, sem: null });
    expect(whys(marked('1', '1', '0', '0', '0'))).toEqual([
      'paper kr20 sem: it takes two questions or more',
      'q1 itemRest: there is no other question',
      'q1 alphaIfDropped: it takes three questions or more',
    ]);
  });
});

describe('the correlation', () => {
  it('is that of hand-worked numbers', () => {
    // Deviations -1 0 1 and -1 1 0: 1 / √(2·2).
    expect(pearson([1, 2, 3], [2, 4, 3])).toBeCloseTo(0.5, 14);
    expect(pearson([1, 2, 3], [30, 20, 10])).toBe(-1);
  });

  it('is nothing where one side never changes or there are fewer than two', () => {
    expect([pearson([1, 1, 1], [1, 2, 3]), pearson([1, 2], [0.1, 0.1]), pearson([1], [1]), pearson([], [])]).toEqual([
      null,
      null,
      null,
      null,
    ]);
    expect(() => pearson([1, 2], [1])).toThrow(RangeError);
  });

  it.each([
    // The reference table of class sizes: r = 0.30, two places.
    [5, -0.79, 0.93],
    [10, -0.41, 0.78],
    [15, -0.25, 0.7],
    [20, -0.16, 0.66],
    [30, -0.07, 0.6],
  ])('of 0.30 among %i has Fisher’s interval', (n, low, high) => {
    const interval = fisherInterval(0.3, n);
    expect(interval?.low).toBeCloseTo(low, 2);
    expect(interval?.high).toBeCloseTo(high, 2);
  });

  it('has no interval below four people, at 1 or -1, or without a correlation', () => {
    expect([fisherInterval(0.3, 3), fisherInterval(1, 9), fisherInterval(-1, 9), fisherInterval(null, 9)]).toEqual([
      null,
      null,
      null,
      null,
    ]);
  });
});

describe('Feldt’s interval', () => {
  it.each([
    // The reference table of class sizes, two places.
    [5, 0.13, 0.96],
    [10, 0.35, 0.91],
    [15, 0.43, 0.88],
    [20, 0.47, 0.86],
    [30, 0.52, 0.84],
  ])('of 0.70 with 26 questions and %i candidates', (n, low, high) => {
    const interval = feldtInterval(0.7, n, 26);
    expect(interval.low).toBeCloseTo(low, 2);
    expect(interval.high).toBeCloseTo(high, 2);
  });
});

describe('a quantile of F', () => {
  /** In parts of the value itself. */
  const apart = (ours: number, theirs: number): number => Math.abs(ours / theirs - 1);

  it('is the closed form where there is one', () => {
    // F(p; 2, d) = d/2 ((1 - p)^(-2/d) - 1), and F(p; 1, 1) = tan²(πp/2).
    for (const d of [1, 2, 7, 40, 1000])
      for (const p of [0.025, 0.5, 0.975])
        expect(apart(fQuantile(p, 2, d), (d / 2) * Math.expm1((-2 / d) * Math.log1p(-p)))).toBeLessThan(1e-12);
    for (const p of [0.025, 0.3, 0.975]) expect(apart(fQuantile(p, 1, 1), Math.tan((Math.PI * p) / 2) ** 2)).toBeLessThan(1e-12);
  });

  it.each([
    // The incomplete beta function in arithmetic of 40 digits.
    [0.975, 19, 285, 1.7774005116305382],
    [0.025, 19, 285, 0.46228061802713666],
    [0.975, 1524, 22860, 1.0748277429656514],
    [0.025, 1524, 22860, 0.9281646190778194],
    [0.975, 4, 100, 2.9165820135863965],
    [0.975, 9, 9, 4.0259941582829795],
  ])('of %d with %d and %d degrees of freedom is that of forty digits', (p, d1, d2, value) =>
    expect(apart(fQuantile(p, d1, d2), value)).toBeLessThan(1e-12),
  );

  it('is one over that of the other tail with the degrees exchanged', () => {
    for (const [d1, d2] of [
      [3, 9],
      [149, 5066],
      [1524, 22860],
    ] as const)
      expect(apart(fQuantile(0.025, d1, d2), 1 / fQuantile(0.975, d2, d1))).toBeLessThan(1e-12);
  });

  it('is refused where there is none', () => {
    for (const [p, d1, d2] of [
      [0, 1, 1],
      [1, 1, 1],
      [0.5, 0, 1],
      [0.5, 1, Number.NaN],
    ] as const)
      expect(() => fQuantile(p, d1, d2)).toThrow(RangeError);
  });
});
