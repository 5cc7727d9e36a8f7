import type { Memory, MemoryModel } from '../memory.js';
import type { Blueprint } from '../syllabus.js';
import { chanceRight, damping, firstSightChances, type FirstSights, type OutlookQuestion } from './chance.js';
import { passChance, type DrawnTopic } from './drawn.js';

/** The chance of passing a paper on a day, as a range, and what would raise it most. */

export interface Outlook {
  /** Chance of passing, from cautious to hopeful. */
  low: number;
  high: number;
  topics: TopicOutlook[];
}

export interface TopicOutlook {
  topic: string;
  /** Questions that the paper asks of it. */
  asked: number;
  /** Expected right answers among them, cautious to hopeful. */
  low: number;
  high: number;
}

export interface OutlookInput {
  questions: readonly OutlookQuestion[];
  paper: Blueprint;
  day: number;
  firstSights: readonly FirstSights[];
}

export function outlookOf({ questions, paper, day, firstSights }: OutlookInput, model: MemoryModel): Outlook {
  const firstSight = firstSightChances(firstSights);
  const byTopic = grouped(questions, paper);
  const drawn = (shift: number): DrawnTopic[] =>
    byTopic.map(({ questions: own, asked, topic }) => ({
      chances: own.map((question) => chanceRight(question, day, firstSight(topic), model, shift)),
      drawn: asked,
    }));
  const [low, high] = [drawn(damping.low), drawn(damping.high)];
  return {
    low: passChance(low, paper.passMark),
    high: passChance(high, paper.passMark),
    topics: byTopic.map(({ topic, asked }, index) => ({
      topic,
      asked,
      low: asked * meanOf(low[index]?.chances ?? []),
      high: asked * meanOf(high[index]?.chances ?? []),
    })),
  };
}

interface Gain {
  objective: string;
  /** Right answers more on the paper, on average. */
  marks: number;
  minutes: number;
}

/**
 * The objectives whose questions, gone over once today, would bring most for each minute. Counted in right answers on the paper: near 0
 * and near 1 the chance of passing hardly moves, and what brings most answers raises it most.
 */
export function bestGains({ questions, paper, day, firstSights }: OutlookInput, today: number, model: MemoryModel, most = 3): Gain[] {
  const firstSight = firstSightChances(firstSights);
  const gains = new Map<string, Gain>();
  for (const { questions: own, asked, topic } of grouped(questions, paper))
    for (const question of own) {
      const before = chanceRight(question, day, firstSight(topic), model, 0);
      const after = chanceRight({ ...question, memory: model.after(question.memory, today, 3), surelyWrong: false }, day, 0, model, 0);
      const gain = gains.get(question.objective) ?? { objective: question.objective, marks: 0, minutes: 0 };
      gain.marks += (asked / own.length) * Math.max(0, after - before);
      gain.minutes += question.seconds / 60;
      gains.set(question.objective, gain);
    }
  return [...gains.values()]
    .filter(({ marks }) => marks > 0.005)
    .sort((a, b) => b.marks / b.minutes - a.marks / a.minutes)
    .slice(0, most);
}

/** By topic, as the paper asks of it; topics that it does not ask, or that have no questions, are left out. */
export function grouped(
  questions: readonly OutlookQuestion[],
  { shares }: Blueprint,
): { topic: string; asked: number; questions: OutlookQuestion[] }[] {
  return Object.entries(shares).flatMap(([topic, asked]) => {
    const own = questions.filter((question) => question.topic === topic);
    return asked === 0 || own.length === 0 ? [] : [{ topic, asked: Math.min(asked, own.length), questions: own }];
  });
}

const meanOf = (values: readonly number[]): number =>
  values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;

/** What a memory is expected to be after a question was asked on a day: recalled or not, each by its chance. */
export function expectedAfter(memory: Memory | null, known: number, day: number, model: MemoryModel): Memory {
  const recalled = memory === null ? known : model.recall(memory, day);
  const [good, again] = [model.after(memory, day, 3), model.after(memory, day, 1)];
  return {
    // Stabilities multiply, so their logarithms are what averages.
    stability: Math.exp(recalled * Math.log(good.stability) + (1 - recalled) * Math.log(again.stability)),
    difficulty: recalled * good.difficulty + (1 - recalled) * again.difficulty,
    lastDay: day,
  };
}
