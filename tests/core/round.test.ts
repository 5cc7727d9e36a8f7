import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { memoryModel } from '../../src/core/memory.js';
import { randomFrom } from '../../src/core/random.js';
import { planRound, type RoundCandidate } from '../../src/core/round.js';

const model = memoryModel();
const today = 1000;

function unseen(questionId: number, topic: string, weight = 2, seconds = 40): RoundCandidate {
  return { questionId, topic, objective: `${topic}-${questionId % 3}`, weight, memory: null, dueDay: null, surelyWrong: false, seconds };
}

/** Last met `ago` days ago, with this stability. */
function met(questionId: number, topic: string, ago: number, stability: number, more: Partial<RoundCandidate> = {}): RoundCandidate {
  const memory = { stability, difficulty: 5, lastDay: today - ago };
  return { ...unseen(questionId, topic), memory, dueDay: model.dueDay(memory), ...more };
}

const plan = (pool: RoundCandidate[], minutes: number) => planRound(pool, today, minutes, model, randomFrom(1));
const topics = ['AA', 'BB', 'CC', 'DD'];
const manyUnseen = Array.from({ length: 40 }, (_, i) => unseen(i + 1, topics[i % 4] as string));
const manyDue = Array.from({ length: 40 }, (_, i) => met(i + 101, topics[i % 4] as string, 10, 2));

describe('a round', () => {
  it('on the first evening is all new and fills the time', () => {
    const round = plan(manyUnseen, 10);
    expect(round.every(({ reason }) => reason === 'new')).toBe(true);
    expect(round).toHaveLength(15); // 600 s at 40 s each
  });

  it('keeps three places in ten for new questions, however much is due', () => {
    const round = plan([...manyUnseen, ...manyDue], 10);
    const fresh = round.filter(({ reason }) => reason === 'new').length;
    expect(fresh / round.length).toBeGreaterThanOrEqual(0.25);
    expect(round.filter(({ reason }) => reason === 'due').length).toBeGreaterThan(fresh);
  });

  it('gives the reserved places back to due questions when nothing is new', () => {
    expect(plan(manyDue, 10).map(({ reason }) => reason)).toEqual(Array.from({ length: 15 }, () => 'due'));
  });

  it('takes what is most nearly forgotten first, and a sure mistake before that', () => {
    const pool = [met(1, 'AA', 5, 4), met(2, 'BB', 30, 4), met(3, 'CC', 2, 1, { surelyWrong: true })];
    expect(plan(pool, 20).map(({ questionId }) => questionId)).toEqual([3, 2, 1]);
  });

  it('of just one question is the one most in need, or a new one when nothing is due', () => {
    expect(plan([met(1, 'AA', 5, 4), met(2, 'BB', 30, 4), ...manyUnseen], 0)).toEqual([{ questionId: 2, reason: 'due' }]);
    expect(plan(manyUnseen, 0)).toHaveLength(1);
  });

  it('goes over what is not due yet when there is nothing else', () => {
    expect(plan([met(1, 'AA', 1, 50), met(2, 'BB', 2, 50)], 5).map(({ reason }) => reason)).toEqual(['early', 'early']);
  });

  it('leaves out what was answered today', () => {
    expect(plan([met(1, 'AA', 0, 0.2)], 10)).toEqual([]);
  });

  it('prefers what matters most among the new ones of a topic', () => {
    const pool = [unseen(3, 'AA', 1), unseen(6, 'AA', 3), unseen(9, 'AA', 2)];
    expect(plan(pool, 0)).toEqual([{ questionId: 6, reason: 'new' }]);
  });

  it('is the same for the same day and person, and holds nobody’s question twice', () => {
    const candidates = fc.array(
      fc.record({
        topic: fc.constantFrom(...topics),
        weight: fc.constantFrom(1, 2, 3),
        ago: fc.option(fc.integer({ min: 0, max: 60 }), { nil: null }),
        s: fc.double({ min: 0.1, max: 300, noNaN: true }),
      }),
      { maxLength: 80 },
    );
    fc.assert(
      fc.property(candidates, fc.constantFrom(0, 5, 10, 20), fc.integer(), (rows, minutes, seed) => {
        const pool = rows.map(({ topic, weight, ago, s }, i) =>
          ago === null ? unseen(i, topic, weight) : met(i, topic, ago, s, { weight }),
        );
        const first = planRound(pool, today, minutes, model, randomFrom(seed));
        expect(planRound(pool, today, minutes, model, randomFrom(seed))).toEqual(first);
        expect(new Set(first.map(({ questionId }) => questionId)).size).toBe(first.length);
        expect(first.length > 0).toBe(pool.some((c) => c.memory?.lastDay !== today));
        expect(first.length * 40).toBeLessThan(minutes === 0 ? 41 : minutes * 60 + 40);
      }),
      { seed: 20261125, numRuns: 300 },
    );
  });

  it('never asks the same topic twice running while another topic is left to ask', () => {
    const topicOf = new Map([...manyUnseen, ...manyDue].map((c) => [c.questionId, c.topic]));
    const round = plan([...manyUnseen, ...manyDue], 20).map(({ questionId }) => topicOf.get(questionId));
    expect(round.filter((topic, i) => i > 0 && topic === round[i - 1])).toEqual([]);
  });
});
