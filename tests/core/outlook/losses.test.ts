import { describe, expect, it } from 'vitest';
import { memoryModel } from '../../../src/core/memory.js';
import type { OutlookQuestion } from '../../../src/core/outlook/chance.js';
import { lossesOf, topicChances } from '../../../src/core/outlook/losses.js';
import { outlookOf } from '../../../src/core/outlook/outlook.js';

const model = memoryModel();
const today = 1000;

const question = (topic: string, objective: string, more: Partial<OutlookQuestion> = {}): OutlookQuestion => ({
  topic,
  objective,
  kind: 'single',
  memory: null,
  surelyWrong: false,
  seconds: 40,
  ...more,
});
/** Recall 0.9 by the meaning of stability. */
const known = { stability: 10, difficulty: 5, lastDay: today - 10 };
const paper = { id: 'five', title: 'Five', questions: 5, passMark: 3, minutes: 5, shares: { AA: 3, BB: 2 } };

describe('marks lost by objective', () => {
  // AA: 3 of 4 questions are drawn. Unmet ones are right with 0.25 before any answer; met ones with 0.9 + 0.1 · 0.25 = 0.925.
  const questions = [
    question('AA', 'AA-01', { memory: known }),
    question('AA', 'AA-01'),
    question('AA', 'AA-02'),
    question('AA', 'AA-02'),
    question('BB', 'BB-01', { memory: known, surelyWrong: true }),
    question('BB', 'BB-01', { memory: known }),
    question('BB', 'BB-01', { memory: known, kind: 'numeric' }),
    question('BB', 'BB-02'),
  ];
  const losses = new Map(lossesOf({ questions, paper, day: today, firstSights: [] }, model).map((loss) => [loss.objective, loss]));

  it('are the objective’s share of the paper times what would be wrong of it', () => {
    expect(losses.get('AA-01')?.lost).toBeCloseTo(0.75 * (0.075 + 0.75), 6);
    expect(losses.get('AA-02')?.lost).toBeCloseTo(0.75 * (0.75 + 0.75), 9);
    // BB: 2 of 4. No luck where a misconception draws: 0.1; one option of four: 0.075; typed: 0.1 · 0.98.
    expect(losses.get('BB-01')?.lost).toBeCloseTo(0.5 * (0.1 + 0.075 + 0.098), 6);
    expect(losses.get('AA-01')).toMatchObject({ topic: 'AA', asked: 1.5, met: 1, of: 2 });
    expect(losses.get('BB-02')).toMatchObject({ asked: 0.5, met: 0, of: 1 });
  });

  it('add up to the paper less the right answers that the outlook expects without its doubt', () => {
    const all = [...losses.values()].reduce((sum, { lost }) => sum + lost, 0);
    const { topics } = outlookOf({ questions, paper, day: today, firstSights: [] }, model);
    const expected = topics.map(({ low, high }) => ({ low, high }));
    expect(all).toBeGreaterThan(5 - expected.reduce((sum, { high }) => sum + high, 0));
    expect(all).toBeLessThan(5 - expected.reduce((sum, { low }) => sum + low, 0));
  });

  it('are none of a topic that the paper does not ask', () => {
    expect(lossesOf({ questions, paper: { ...paper, shares: { AA: 3 } }, day: today, firstSights: [] }, model)).toHaveLength(2);
  });
});

describe('the chance of being right in a topic', () => {
  it('holds what was never asked, by how first sights went, beside what was', () => {
    const questions = [
      question('AA', 'AA-01', { memory: known }),
      question('AA', 'AA-01', { memory: known }),
      question('AA', 'AA-02'),
      question('BB', 'BB-01'),
    ];
    // Two first sights, both wrong: overall (1 + 0) / (4 + 2) = 1/6; in AA (0 + 5 · 1/6) / (2 + 5) = 5/42, by hand. Met ones: 0.9 + 0.1 · 0.25.
    const chances = topicChances(questions, [{ topic: 'AA', right: 0, met: 2 }], today, model);
    expect(chances.get('AA')).toBeCloseTo((2 * 0.925 + 5 / 42) / 3, 6);
    expect(chances.get('BB')).toBeCloseTo(1 / 6, 9);
  });
});
