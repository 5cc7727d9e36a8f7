import { describe, expect, it } from 'vitest';
import { memoryModel, type Memory } from '../../../src/core/memory.js';
import { fadingNext, laddersOf, type ProgressQuestion } from '../../../src/core/progress/ladders.js';

const model = memoryModel();
const today = 20_000;
/** Met today and right, and met today and wrong. */
const right: Memory = model.after(null, today, 3);
const wrong: Memory = model.after(null, today, 1);

function question(objective: string, memory: Memory | null, more: Partial<ProgressQuestion> = {}): ProgressQuestion {
  const topic = objective.slice(0, 2);
  return { slug: 'pack', topic, topicTitle: topic, objective, objectiveTitle: objective, weight: 2, memory, surelyWrong: false, ...more };
}

const footings = (questions: ProgressQuestion[]): Record<string, string> =>
  Object.fromEntries(laddersOf(questions, today, model).flatMap(({ rungs }) => rungs.map((rung) => [rung.objective, rung.footing])));

describe('ladders', () => {
  it('keep the topics in the order of the questions and the rungs in the order of their codes', () => {
    const ladders = laddersOf([question('SH-10', null), question('EA-01', null), question('SH-02', null)], today, model);
    expect(ladders.map(({ topic, rungs }) => [topic, rungs.map(({ objective }) => objective)])).toEqual([
      ['SH', ['SH-02', 'SH-10']],
      ['EA', ['EA-01']],
    ]);
  });

  it('hold topics of the same name in two packs apart', () => {
    expect(laddersOf([question('SH-01', null), question('SH-01', null, { slug: 'other' })], today, model)).toHaveLength(2);
  });

  it('have a rung firm when half of it was met and would be recalled tomorrow', () => {
    expect(footings([question('SH-01', right), question('SH-01', null)])).toEqual({ 'SH-01': 'firm' });
  });

  it('have a rung loose when less than half was met', () => {
    expect(footings([question('SH-01', right), question('SH-01', null), question('SH-01', null)])).toEqual({ 'SH-01': 'loose' });
  });

  it('have a rung loose when what was met will be forgotten', () => {
    expect(footings([question('SH-01', wrong)])).toEqual({ 'SH-01': 'loose' });
    expect(footings([question('SH-01', { ...right, lastDay: today - 60 })])).toEqual({ 'SH-01': 'loose' });
  });

  it('have a rung loose while somebody holds a sure mistake on it', () => {
    expect(footings([question('SH-01', right, { surelyWrong: true }), question('SH-01', right)])).toEqual({ 'SH-01': 'loose' });
  });

  it('have a rung not yet while nothing of it was met', () => {
    const [ladder] = laddersOf([question('SH-01', null), question('SH-01', null)], today, model);
    expect(ladder?.rungs[0]).toMatchObject({ footing: 'none', met: 0, of: 2, recall: null });
  });
});

describe('what fades next', () => {
  const stable = (days: number): Memory => ({ stability: days, difficulty: 5, lastDay: today });

  it('is told by objective, the soonest first, each with its earliest day', () => {
    // Wanted 0.87 for weight 2: a little after the day on which recall is 0.9, which is the stability.
    const fading = fadingNext([question('SH-01', stable(4)), question('EA-01', stable(1)), question('EA-01', stable(3))], today, model);
    expect(fading.map(({ objective, questions }) => [objective, questions])).toEqual([
      ['EA-01', 2],
      ['SH-01', 1],
    ]);
    expect(fading[0]?.day).toBeLessThan(fading[1]?.day ?? 0);
  });

  it('leaves out what was never met and what holds for more than a week', () => {
    expect(fadingNext([question('SH-01', null), question('SH-02', stable(30))], today, model)).toEqual([]);
  });

  it('counts what is overdue as today', () => {
    expect(fadingNext([question('SH-01', { ...stable(1), lastDay: today - 90 })], today, model)[0]?.day).toBe(today);
  });
});
