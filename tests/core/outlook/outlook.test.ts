import { describe, expect, it } from 'vitest';
import { memoryModel } from '../../../src/core/memory.js';
import { chanceRight, firstSightChances, type OutlookQuestion } from '../../../src/core/outlook/chance.js';
import { convolved, drawnDistribution, passChance, tail } from '../../../src/core/outlook/drawn.js';
import { bestGains, outlookOf } from '../../../src/core/outlook/outlook.js';
import { atLeast } from '../../../src/core/outlook/poisson-binomial.js';

const model = memoryModel();
const today = 1000;

/** Every subset of a size, for counting by hand what the recursion counts. */
function subsets<T>(items: readonly T[], size: number): T[][] {
  if (size === 0) return [[]];
  return items.flatMap((item, index) => subsets(items.slice(index + 1), size - 1).map((rest) => [item, ...rest]));
}

describe('the number right on a paper that is drawn', () => {
  it('is the mean over every paper that could be drawn', () => {
    const chances = [0.9, 0.2, 0.55, 1, 0, 0.7];
    for (const drawn of [1, 2, 3, 6]) {
      const papers = subsets(chances, drawn);
      const distribution = drawnDistribution({ chances, drawn });
      for (let least = 0; least <= drawn; least += 1) {
        const expected = papers.reduce((sum, paper) => sum + atLeast(paper, least), 0) / papers.length;
        expect(tail(distribution, least)).toBeCloseTo(expected, 12);
      }
    }
  });

  it('of several topics is that of their sum', () => {
    const [a, b] = [
      { chances: [0.3, 0.6], drawn: 2 },
      { chances: [0.8, 0.5, 0.1], drawn: 3 },
    ];
    const all = convolved([drawnDistribution(a), drawnDistribution(b)]);
    for (let least = 0; least <= 5; least += 1) expect(tail(all, least)).toBeCloseTo(atLeast([0.3, 0.6, 0.8, 0.5, 0.1], least), 12);
  });

  it('gives the chances of passing of the scheduling study for questions that are all alike', () => {
    // Section 6: mean R and P(pass), 26 questions, 19 to pass, guessed right with 0.25.
    for (const [recall, pass] of [
      [0.5, 0.182],
      [0.6, 0.461],
      [0.7, 0.786],
      [0.8, 0.968],
      [0.9, 0.9995],
    ] as const) {
      const chances = Array.from({ length: 300 }, () => recall + (1 - recall) * 0.25);
      // Printed there to three figures.
      expect(Math.abs(passChance([{ chances, drawn: 26 }], 19) - pass)).toBeLessThan(0.001);
    }
  });
});

const question = (topic: string, more: Partial<OutlookQuestion> = {}): OutlookQuestion => ({
  topic,
  objective: `${topic}-01`,
  kind: 'single',
  memory: { stability: 50, difficulty: 5, lastDay: today },
  surelyWrong: false,
  seconds: 40,
  ...more,
});

describe('the chance of a right answer', () => {
  it('adds luck once to what is recalled, and none where a misconception draws to one option', () => {
    const memory = { stability: 10, difficulty: 5, lastDay: today - 10 }; // recall 0.9 by the meaning of stability
    expect(chanceRight(question('AA', { memory }), today, 0, model, 0)).toBeCloseTo(0.9 + 0.1 * 0.25, 6);
    expect(chanceRight(question('AA', { memory, kind: 'numeric' }), today, 0, model, 0)).toBeCloseTo(0.9 + 0.1 * 0.02, 6);
    expect(chanceRight(question('AA', { memory, surelyWrong: true }), today, 0, model, 0)).toBeCloseTo(0.9, 6);
  });

  it('goes by first sights where nothing was met, which hold luck already', () => {
    expect(chanceRight(question('AA', { memory: null }), today, 0.6, model, 0)).toBe(0.6);
  });

  it('is one in four before any answer, and comes to a topic’s own share as answers come', () => {
    expect(firstSightChances([])('AA')).toBe(0.25);
    const few = firstSightChances([
      { topic: 'AA', right: 2, met: 2 },
      { topic: 'BB', right: 10, met: 30 },
    ]);
    // Overall 13 of 36; AA: (2 + 5 * 13/36) / 7, worked by hand.
    expect(few('AA')).toBeCloseTo(0.5437, 4);
    expect(few('CC')).toBeCloseTo(13 / 36, 12);
    const many = firstSightChances([{ topic: 'AA', right: 180, met: 200 }]);
    expect(many('AA')).toBeCloseTo(0.9, 2);
  });
});

describe('the outlook', () => {
  const paper = { id: 'four', title: 'Four', questions: 4, passMark: 3, minutes: 5, shares: { AA: 3, BB: 1 } };
  const pool = [...Array.from({ length: 10 }, () => question('AA')), ...Array.from({ length: 5 }, () => question('BB', { memory: null }))];
  const input = { questions: pool, paper, day: today + 20, firstSights: [{ topic: 'AA', right: 5, met: 10 }] };

  it('is a range, the cautious end ten points of recall below', () => {
    const { low, high, topics } = outlookOf(input, model);
    expect(low).toBeLessThan(high);
    expect([low > 0, high < 1]).toEqual([true, true]);
    const recall = model.recall(question('AA').memory ?? { stability: 1, difficulty: 5, lastDay: 0 }, today + 20);
    expect(topics[0]?.low).toBeCloseTo(3 * (recall - 0.1 + (1.1 - recall) * 0.25), 9);
    expect(topics.map(({ topic, asked }) => [topic, asked])).toEqual([
      ['AA', 3],
      ['BB', 1],
    ]);
  });

  it('grows with what is remembered, and falls with the days', () => {
    const firmer = { ...input, questions: pool.map((each) => ({ ...each, memory: { stability: 500, difficulty: 5, lastDay: today } })) };
    expect(outlookOf(firmer, model).low).toBeGreaterThan(outlookOf(input, model).low);
    expect(outlookOf({ ...input, day: today + 200 }, model).high).toBeLessThan(outlookOf(input, model).high);
  });

  it('is raised most by what is unknown and often asked', () => {
    const gains = bestGains({ ...input, questions: [...pool, question('AA', { objective: 'AA-02', memory: null })] }, today, model);
    expect(gains.map(({ objective }) => objective)).toContain('AA-02');
    expect(gains.every(({ marks, minutes }) => marks > 0 && minutes > 0)).toBe(true);
    expect(bestGains({ ...input, questions: [] }, today, model)).toEqual([]);
  });
});
