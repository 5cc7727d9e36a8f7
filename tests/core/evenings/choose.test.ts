import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mostWrong, wrongness, type ClassFigure, type EveningCandidate } from '../../../src/core/evenings/choose.js';
import { readHands, together } from '../../../src/core/evenings/hands.js';
import { namesOf, readWishes, type NamedQuestion } from '../../../src/core/evenings/wishes.js';

const candidate = (questionId: number, objective: string, weight = 1): EveningCandidate => ({
  questionId,
  objective,
  topic: objective.slice(0, 2),
  weight,
});
const figure = (sure: number, wrong: number, answers: number): ClassFigure => ({ sure, wrong, answers });
const none = new Set<number>();

describe('questions for a class', () => {
  it('are those of most sure mistakes, then those most often wrong, one of each objective', () => {
    const pool = [candidate(1, 'AA-01'), candidate(2, 'AA-01'), candidate(3, 'AA-02'), candidate(4, 'BB-01'), candidate(5, 'BB-02')];
    const figures = new Map([
      [1, figure(2, 3, 6)],
      [2, figure(1, 6, 6)],
      [3, figure(0, 5, 10)],
      [4, figure(0, 9, 10)],
      [5, figure(0, 0, 10)],
    ]);
    // 1 has two sure mistakes; 2 shares its objective; 4 has nine of ten wrong, 3 five of ten, 5 none.
    expect(mostWrong(pool, figures, none, 4)).toEqual([1, 4, 3, 5]);
    // With no other objectives left, the second of one is taken.
    expect(mostWrong(pool, figures, none, 5)).toEqual([1, 4, 3, 5, 2]);
  });

  it('one wrong answer of one does not outrank nine of ten, by Laplace’s rule: 2/3 against 10/12', () => {
    expect(wrongness(figure(0, 1, 1))).toBeCloseTo(2 / 3, 12);
    expect(wrongness(figure(0, 9, 10))).toBeCloseTo(10 / 12, 12);
    expect(
      mostWrong(
        [candidate(1, 'AA-01'), candidate(2, 'AA-02')],
        new Map([
          [1, figure(0, 1, 1)],
          [2, figure(0, 9, 10)],
        ]),
        none,
        1,
      ),
    ).toEqual([2]);
  });

  it('that nobody has met stand between those that somebody had wrong and those that all had right', () => {
    const pool = [candidate(1, 'AA-01'), candidate(2, 'AA-02'), candidate(3, 'AA-03')];
    expect(
      mostWrong(
        pool,
        new Map([
          [1, figure(0, 0, 5)],
          [3, figure(0, 1, 30)],
        ]),
        none,
        3,
      ),
    ).toEqual([3, 2, 1]);
  });

  it('of a class that has answered nothing come from one topic after the other, what matters most first', () => {
    const pool = [candidate(1, 'AA-01', 1), candidate(2, 'AA-02', 3), candidate(3, 'BB-01', 2), candidate(4, 'AA-03', 3)];
    expect(mostWrong(pool, new Map(), none, 4)).toEqual([2, 3, 4, 1]);
  });

  it('are not those of the last evening while there are others', () => {
    const pool = [candidate(1, 'AA-01'), candidate(2, 'AA-02')];
    const figures = new Map([[1, figure(5, 5, 5)]]);
    expect(mostWrong(pool, figures, new Set([1]), 1)).toEqual([2]);
    expect(mostWrong(pool, figures, new Set([1]), 2)).toEqual([2, 1]);
  });

  it('are as many as asked or as there are, each once, whatever the figures', () => {
    const some = fc.array(fc.tuple(fc.integer({ min: 1, max: 3 }), fc.constantFrom('AA-01', 'AA-02', 'BB-01', 'CC-01')), { maxLength: 30 });
    fc.assert(
      fc.property(some, fc.nat(25), fc.array(fc.nat(30)), (rows, count, recent) => {
        const pool = rows.map(([weight, objective], index) => candidate(index, objective, weight));
        const figures = new Map(pool.map(({ questionId }) => [questionId, figure(questionId % 3, questionId % 5, 5)]));
        const chosen = mostWrong(pool, figures, new Set(recent), count);
        expect(chosen).toHaveLength(Math.min(count, pool.length));
        expect(new Set(chosen).size).toBe(chosen.length);
        const objectives = new Set(chosen.map((id) => pool[id]?.objective));
        expect(objectives.size).toBe(Math.min(chosen.length, new Set(pool.map(({ objective }) => objective)).size));
      }),
    );
  });
});

describe('wishes that are typed', () => {
  const named = (questionId: number, code: string, unfit: string | null = null, slug = 'small'): NamedQuestion => ({
    questionId,
    code,
    slug,
    objective: code.slice(0, 5),
    topic: code.slice(0, 2),
    unfit,
  });
  const bank = [
    named(7, 'AA-01-001'),
    named(8, 'AA-01-002', 'takes more than one letter'),
    named(9, 'BB-01-001'),
    named(21, 'AA-01-001', null, 'other'),
  ];

  it('name questions by code or number, objectives and topics, in any mixture and each once', () => {
    const read = readWishes('aa-01-001, 9;BB-01  bb\nAA-01-001', bank);
    expect(read).toEqual({ ok: true, wishes: { questionIds: [7, 9], objectives: ['BB-01'], topics: ['BB'] } });
    expect(readWishes('  \n', bank)).toEqual({ ok: true, wishes: { questionIds: [], objectives: [], topics: [] } });
  });

  it('are refused with the word that names nothing, and with the reason why a question cannot be asked', () => {
    expect(readWishes('BB ZZ-09', bank)).toEqual({ ok: false, why: '“ZZ-09” is no question, objective or topic of the bank.' });
    expect(readWishes('AA-01-002', bank)).toEqual({ ok: false, why: 'AA-01-002 takes more than one letter.' });
    const many = Array.from({ length: 21 }, (_, index) => named(100 + index, `CC-01-0${index}`));
    expect(readWishes(many.map(({ code }) => code).join(' '), many)).toMatchObject({ ok: false });
  });

  it('come back as they were named: by number where another pack’s question has the code', () => {
    expect(namesOf([7, 21, 9, 5], bank)).toEqual(['AA-01-001', '21', 'BB-01-001']);
    const ids = [7, 21, 9];
    expect(readWishes(namesOf(ids, bank).join(' '), bank)).toMatchObject({ wishes: { questionIds: ids } });
  });
});

describe('hands', () => {
  it('are numbers, an empty box counts none, and all empty is not counted', () => {
    expect(readHands(['3', ' 0', '', '12'])).toEqual({ ok: true, hands: [3, 0, 0, 12] });
    expect(readHands(['', '', '0'])).toEqual({ ok: true, hands: [] });
    expect(readHands(['1', 'two', ''])).toMatchObject({ ok: false, index: 1 });
    for (const bad of ['-1', '1000', '1.5', '１']) expect(readHands([bad]).ok, bad).toBe(false);
  });

  it('are counted together with the phones, option by option', () => {
    expect(together([2, 0, 5], [1, 4, 0])).toEqual([3, 4, 5]);
    expect(together([2, 0, 5], [])).toEqual([2, 0, 5]);
  });
});
