// What a plan, an outlook and a replay cost on one core, over a made-up pool of 400 questions.
import { memoryModel } from '../../dist/src/core/memory.js';
import { outlookOf } from '../../dist/src/core/outlook/outlook.js';
import { planSitting } from '../../dist/src/core/plan/day.js';
import { randomFrom } from '../../dist/src/core/random.js';
import { replay } from '../../dist/src/core/replay.js';

const model = memoryModel();
const today = 1000;

const pool = Array.from({ length: 400 }, (_, i) => ({
  questionId: i,
  topic: `T${i % 13}`,
  objective: `O${i % 80}`,
  kind: 'single',
  weight: 3,
  paperWeight: 1,
  memory: i % 3 === 0 ? null : { stability: 1 + (i % 30), difficulty: 5, lastDay: today - 10 - (i % 20) },
  surelyWrong: false,
  seconds: 40,
}));

const shares = Object.fromEntries(Array.from({ length: 13 }, (_, i) => [`T${i}`, i === 0 ? 4 : 3]));
const paper = { id: 'forty', title: 'Forty', questions: 40, passMark: 30, minutes: 50, shares };

/** Ten answers to one question, as the record keeps them. */
function log(seed) {
  let memory = null;
  return Array.from({ length: 10 }, (_, k) => {
    const [before, day, rating] = [memory, 100 + 3 * k + (seed % 5), [3, 1, 3, 2, 3][(seed + k) % 5]];
    memory = model.after(before, day, rating);
    return { revision: 1, day, rating, before, after: memory };
  });
}
const logs = Array.from({ length: 100 }, (_, seed) => log(seed));

const sitting = (examDay) => ({
  today,
  settings: { examDay, minutes: 15, weekdaysOff: [], daysOff: [] },
  secondsToday: 0,
  metToday: 0,
  seconds: 900,
});

/** Each with how many of its unit one call does, and how many a second are aimed at. */
export const planWorks = [
  { name: 'days planned, of 400', aim: 500, unit: 1, work: (i) => planSitting(pool, sitting(today + 30), model, randomFrom(i)) },
  { name: 'days planned, last fortnight', aim: 500, unit: 1, work: (i) => planSitting(pool, sitting(today + 10), model, randomFrom(i)) },
  {
    name: 'outlooks, 40 questions',
    aim: 1000,
    unit: 1,
    work: () => outlookOf({ questions: pool, paper, day: today + 10, firstSights: [] }, model),
  },
  {
    name: 'reviews replayed',
    aim: 500_000,
    unit: 10,
    work: (i) => replay(logs[i % logs.length], { memory: logs[i % logs.length].at(-1).after, revision: 1 }, model),
  },
];
