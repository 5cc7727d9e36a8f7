import { describe, expect, it } from 'vitest';
import { commonMistakes, openerOf, type LastAnswer } from '../../../src/core/classes/mistakes.js';

const answer = (personId: number, questionId: number, mistake: string | null, more: Partial<LastAnswer> = {}): LastAnswer => ({
  personId,
  questionId,
  objective: 'FU-02',
  right: mistake === null,
  sure: false,
  mistake,
  ...more,
});

describe('the mistakes of a class', () => {
  it('are counted by people, of those who were asked that question', () => {
    const found = commonMistakes([
      answer(1, 7, 'multiplied', { sure: true }),
      answer(2, 7, 'multiplied'),
      answer(3, 7, 'multiplied', { sure: true }),
      answer(4, 7, 'forgot the unit'),
      answer(5, 7, null),
      answer(1, 8, 'lifts the earth'),
      answer(2, 8, 'lifts the earth'),
    ]);
    expect(found).toEqual([
      { questionId: 7, mistake: 'multiplied', people: 3, of: 5, sure: 2 },
      { questionId: 8, mistake: 'lifts the earth', people: 2, of: 2, sure: 0 },
    ]);
  });

  it('of a single person are left out: it may be a slip', () => {
    expect(commonMistakes([answer(1, 7, 'multiplied'), answer(2, 7, 'forgot the unit'), answer(3, 7, null)])).toEqual([]);
  });

  it('that were made with certainty stand before others of as many people', () => {
    const found = commonMistakes([answer(1, 7, 'a'), answer(2, 7, 'a'), answer(1, 8, 'b', { sure: true }), answer(2, 8, 'b')]);
    expect(found.map(({ mistake }) => mistake)).toEqual(['b', 'a']);
  });

  it('that cannot be named are not counted as one', () => {
    expect(commonMistakes([answer(1, 7, null, { right: false }), answer(2, 7, null, { right: false })])).toEqual([]);
  });
});

describe('the questions to open with', () => {
  const question = (questionId: number, objective: string, wrong: number) => ({ questionId, objective, wrong });

  it('come in turn from each objective, what most have wrong first', () => {
    const questions = [
      question(1, 'EA-03', 2),
      question(2, 'EA-03', 5),
      question(3, 'LA-01', 1),
      question(4, 'LA-01', 0),
      question(5, 'FU-02', 9),
    ];
    expect(openerOf(['EA-03', 'LA-01'], questions, 6).map(({ questionId }) => questionId)).toEqual([2, 3, 1, 4]);
    expect(openerOf(['EA-03', 'LA-01'], questions, 3).map(({ questionId }) => questionId)).toEqual([2, 3, 1]);
  });

  it('are none where nothing is taught', () => {
    expect(openerOf([], [question(1, 'EA-03', 2)], 6)).toEqual([]);
  });
});
