import { memoryModel, type Memory } from '../memory.js';
import { passChance } from '../outlook/drawn.js';
import type { PlanCandidate } from '../plan/candidate.js';
import { planSitting } from '../plan/day.js';
import { randomFrom, shuffled } from '../random.js';
import { ratingOf } from '../rating.js';
import { learner, type LearnerKind } from './learners.js';

/**
 * Simulated learners through the project's own planner and scheduler, against two plain policies. The setting is that of the scheduling
 * study: 300 items, an exam of 26 drawn from them with 19 to pass, and an item that is not recalled guessed right with 0.25.
 */

export const policyNames = ['plan', 'retention-0.9', 'ladder'] as const;
export type PolicyName = (typeof policyNames)[number];

export interface Setting {
  days: number;
  answersADay: number;
  /** Share of the days on which the learner comes. */
  attendance: number;
}

export const settings = {
  'full-time': { days: 42, answersADay: 40, attendance: 1 },
  'half-the-time': { days: 42, answersADay: 20, attendance: 1 },
  'late-start': { days: 21, answersADay: 40, attendance: 1 },
  patchy: { days: 42, answersADay: 40, attendance: 0.7 },
} as const satisfies Record<string, Setting>;
export type SettingName = keyof typeof settings;

export interface Outcome {
  /** Expected number of items recalled on the exam day. */
  recalled: number;
  /** Chance of passing, exact. */
  pass: number;
  neverSeen: number;
}

const itemCount = 300;
const guess = 0.25;
const paper = { questions: 26, passMark: 19 };
const secondsEach = 60;
const model = memoryModel();

interface Seen {
  memory: Memory;
  /** For the ladder: which rung, and the day it is due. */
  rung: number;
  due: number;
}

type Policy = (seen: ReadonlyMap<number, Seen>, day: number, setting: Setting, seed: number) => number[];

export function simulate(kind: LearnerKind, policy: PolicyName, setting: Setting, seed: number): Outcome {
  const person = learner(kind, seed);
  const seen = new Map<number, Seen>();
  for (let day = 0; day < setting.days; day += 1) {
    if (randomFrom(`attends ${seed} ${day}`).next() >= setting.attendance) continue;
    for (const item of policies[policy](seen, day, setting, seed)) {
      const before = seen.get(item) ?? null;
      const { recalled, ease } = person.meet(item, day);
      const lucky = !recalled && randomFrom(`guess ${seed} ${item} ${day}`).next() < guess;
      const rating = ratingOf({
        way: 'options',
        right: recalled || lucky,
        certainty: !recalled ? 'guessing' : ease === 'hard' ? 'fairly' : 'sure',
        expectedRecall: before === null ? null : model.recall(before.memory, day),
        stage: 'first',
      });
      const rung = recalled ? Math.min(rungs.length, (before?.rung ?? 0) + 1) : 1;
      seen.set(item, { memory: model.after(before?.memory ?? null, day, rating ?? 1), rung, due: day + (rungs[rung - 1] ?? 1) });
    }
  }
  return outcomeOf(person, seen, setting.days);
}

function outcomeOf(person: ReturnType<typeof learner>, seen: ReadonlyMap<number, Seen>, examDay: number): Outcome {
  const recalls = Array.from({ length: itemCount }, (_, item) => person.recall(item, examDay));
  const chances = recalls.map((recall) => recall + (1 - recall) * guess);
  return {
    recalled: recalls.reduce((sum, recall) => sum + recall, 0),
    pass: passChance([{ chances, drawn: paper.questions }], paper.passMark),
    neverSeen: itemCount - seen.size,
  };
}

/** Days between the reviews of the fixed ladder; whoever forgets starts again. */
const rungs = [1, 3, 7, 14, 30];
const mostNew = 20;

const policies: Record<PolicyName, Policy> = {
  plan: (seen, day, setting, seed) => {
    const sitting = {
      today: day,
      settings: { examDay: setting.days, minutes: (setting.answersADay * secondsEach) / 60, weekdaysOff: [], daysOff: [] },
      secondsToday: 0,
      metToday: 0,
      seconds: setting.answersADay * secondsEach,
    };
    const planned = planSitting(poolOf(seen), sitting, model, randomFrom(`plan ${seed} ${day}`));
    return planned.map(({ questionId }) => questionId).slice(0, setting.answersADay);
  },
  'retention-0.9': (seen, day, setting, seed) => {
    const open = [...seen].map(([item, { memory }]) => ({ item, recall: model.recall(memory, day) })).sort((a, b) => a.recall - b.recall);
    const due = open.filter(({ recall }) => recall <= 0.9).map(({ item }) => item);
    const early = open.filter(({ recall }) => recall > 0.9).map(({ item }) => item);
    return [...due, ...unseen(seen, seed).slice(0, mostNew), ...early].slice(0, setting.answersADay);
  },
  ladder: (seen, day, setting, seed) => {
    const due = [...seen].filter(([, { due: dueDay }]) => dueDay <= day).sort((a, b) => a[1].due - b[1].due);
    const early = [...seen].filter(([, { due: dueDay }]) => dueDay > day).sort((a, b) => a[1].due - b[1].due);
    const items = (list: typeof due) => list.map(([item]) => item);
    return [...items(due), ...unseen(seen, seed).slice(0, mostNew), ...items(early)].slice(0, setting.answersADay);
  },
};

function poolOf(seen: ReadonlyMap<number, Seen>): PlanCandidate[] {
  return Array.from({ length: itemCount }, (_, item) => ({
    questionId: item,
    topic: `T${item % 13}`,
    objective: `T${item % 13}-${Math.floor(item / 13) % 6}`,
    weight: 3,
    paperWeight: 1,
    memory: seen.get(item)?.memory ?? null,
    surelyWrong: false,
    seconds: secondsEach,
  }));
}

/** In an order of the learner's own. */
function unseen(seen: ReadonlyMap<number, Seen>, seed: number): number[] {
  const items = Array.from({ length: itemCount }, (_, item) => item);
  return shuffled(items, randomFrom(`order ${seed}`)).filter((item) => !seen.has(item));
}
