import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyse, type Analysis } from '../../../src/core/analysis/analyse.js';
import { pearson } from '../../../src/core/analysis/correlation.js';
import { notesOf } from '../../../src/core/analysis/notes.js';
import type { Responses } from '../../../src/core/analysis/responses.js';

/** What must hold for any table. */

const options = ['A', 'B', 'C'];
const cell = fc.constantFrom('A', 'B', 'C', null);
const tables = fc
  .record({ k: fc.integer({ min: 1, max: 6 }), n: fc.integer({ min: 0, max: 12 }) })
  .chain(({ k, n }) =>
    fc.record({
      keys: fc.array(fc.constantFrom(...options), { minLength: k, maxLength: k }),
      rows: fc.array(fc.array(cell, { minLength: k, maxLength: k }), { minLength: n, maxLength: n }),
    }),
  )
  .map(({ keys, rows }): Responses => ({
    questions: keys.map((right, index) => ({ id: `q${index + 1}`, key: { right, options } })),
    rows,
  }));

/** Every figure in turn, with its name. */
function figures(value: unknown, name = ''): [string, number | null][] {
  if (typeof value === 'number' || value === null) return [[name, value]];
  if (typeof value === 'object') return Object.entries(value as object).flatMap(([key, inner]) => figures(inner, `${name}.${key}`));
  return [];
}

/** Names of the figures that are not the same; sums in another order may differ in the last place. */
function differing(a: unknown, b: unknown): string[] {
  const theirs = new Map(figures(b));
  const ours = figures(a);
  const wrong = ours.filter(([name, value]) => {
    const other = theirs.get(name);
    if (other === undefined || other === null || value === null) return value !== other;
    return Math.abs(value - other) >= 1e-9;
  });
  return [...wrong.map(([name]) => name), ...(ours.length === theirs.size ? [] : ['another number of figures'])];
}

const near = (a: number | null | undefined, b: number | null): void => {
  if (b === null) expect(a).toBeNull();
  else expect(Math.abs((a ?? Number.NaN) - b)).toBeLessThan(1e-9);
};

describe('a correlation', () => {
  it('of what goes wholly together is exactly 1 or -1, so that no interval is made up for it', () => {
    const marks = fc.array(fc.constantFrom(0, 1), { minLength: 2, maxLength: 60 }).filter((x) => new Set(x).size === 2);
    fc.assert(
      fc.property(
        marks,
        fc.integer({ min: -9, max: 9 }).filter((slope) => slope !== 0),
        fc.integer({ min: 0, max: 40 }),
        (x, slope, from) => {
          const y = x.map((mark) => from + slope * mark);
          expect(pearson(x, y)).toBe(Math.sign(slope));
        },
      ),
    );
  });
});

describe('an analysis', () => {
  it('does not depend on the order of the candidates', () => {
    fc.assert(
      fc.property(tables, fc.nat(), (table, shift) => {
        const { rows } = table;
        const turned = rows.map((_, index) => rows[(index * (rows.length % 5 === 0 ? 1 : 5) + shift) % rows.length] as (string | null)[]);
        expect(differing(analyse({ ...table, rows: turned }), analyse(table))).toEqual([]);
        expect(differing(analyse({ ...table, rows: [...rows].reverse() }), analyse(table))).toEqual([]);
      }),
    );
  });

  it('moves its questions about with their columns and changes none', () => {
    fc.assert(
      fc.property(tables, (table) => {
        const back = analyse({ questions: [...table.questions].reverse(), rows: table.rows.map((row) => [...row].reverse()) });
        expect(differing({ ...back, questions: [...back.questions].reverse() }, analyse(table))).toEqual([]);
      }),
    );
  });

  it('counts a question that everybody has right among its questions', () => {
    fc.assert(
      fc.property(tables, (table) => {
        const before = analyse(table);
        const easy = { id: 'easy', key: { right: 'A', options } };
        const after = analyse({ questions: [...table.questions, easy], rows: table.rows.map((row) => [...row, 'A']) });
        const { k } = before.paper;
        expect(after.paper.k).toBe(k + 1);
        near(after.paper.sd, before.paper.sd);
        // What is within the brackets of KR-20 stays; the factor before it becomes (k + 1) / k.
        if (before.paper.kr20 !== null) near(after.paper.kr20, (before.paper.kr20 * (k - 1) * (k + 1)) / k ** 2);
        near(after.questions[k]?.alphaIfDropped, before.paper.kr20);
        before.questions.forEach(({ itemRest, itemTotal, upperLower27 }, place) => {
          near(after.questions[place]?.itemRest, itemRest);
          near(after.questions[place]?.itemTotal, itemTotal);
          near(after.questions[place]?.upperLower27, upperLower27);
        });
      }),
    );
  });

  it('agrees with itself: options sum to the candidates, facilities to the mean, and the key’s option is the question', () => {
    fc.assert(
      fc.property(tables, (table) => {
        const { paper, questions } = analyse(table);
        if (paper.mean !== null)
          near(
            questions.reduce((sum, { facility }) => sum + (facility ?? 0), 0),
            paper.mean,
          );
        for (const { key, n, right, itemTotal, itemRest, options: own } of questions) {
          expect(own.reduce((sum, { count }) => sum + count, 0)).toBe(n);
          const keyed = own.find(({ option }) => option === key);
          expect(keyed?.count).toBe(right);
          near(keyed?.itemTotal, itemTotal);
          near(keyed?.itemRest, itemRest);
        }
      }),
    );
  });

  it('keeps every figure within its bounds', () => {
    fc.assert(
      fc.property(tables, (table) => {
        const { paper, questions } = analyse(table);
        expect(paper.kr20 ?? 0).toBeLessThanOrEqual(1);
        for (const { facilityInterval, facility, itemRest, itemRestInterval, upperLower27 } of questions) {
          for (const r of [itemRest, upperLower27]) expect(Math.abs(r ?? 0)).toBeLessThanOrEqual(1);
          if (facilityInterval !== null)
            expect([facilityInterval.low <= (facility ?? -1), (facility ?? 2) <= facilityInterval.high]).toEqual([true, true]);
          if (itemRestInterval !== null)
            expect(itemRestInterval.low < (itemRest ?? -2) && (itemRest ?? 2) < itemRestInterval.high).toBe(true);
        }
      }),
    );
  });

  it('says why for every figure that is null, and for no other', () => {
    const nulls = ({ paper, questions }: Analysis): string[] => [
      ...(['mean', 'sd', 'kr20', 'sem'] as const).filter((value) => paper[value] === null).map((value) => `paper ${value}`),
      ...questions.flatMap((question) => [
        ...(['itemTotal', 'itemRest', 'upperLower27', 'alphaIfDropped', 'facility'] as const)
          .filter((value) => question[value] === null)
          .map((value) => `${question.id} ${value}`),
        ...question.options.flatMap((option) =>
          (['itemTotal', 'itemRest'] as const)
            .filter((value) => option[value] === null)
            .map((value) => `${question.id}/${option.option} ${value}`),
        ),
      ]),
    ];
    fc.assert(
      fc.property(tables, (table) => {
        const analysis = analyse(table);
        const said = notesOf(analysis).flatMap(({ question, options: about, values }) =>
          values
            .filter((value) => !/^facility(Low|High)$/.test(value))
            .flatMap((value) =>
              about === null ? [`${question ?? 'paper'} ${value}`] : about.map((option) => `${question}/${option} ${value}`),
            ),
        );
        expect(said.sort()).toEqual(nulls(analysis).sort());
      }),
    );
  });
});
