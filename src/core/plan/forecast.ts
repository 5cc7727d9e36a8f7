import type { Memory, MemoryModel } from '../memory.js';
import { randomFrom } from '../random.js';
import type { PlanCandidate } from './candidate.js';
import { planSitting } from './day.js';
import { isDayOff, type PlanSettings } from './settings.js';

/** What the plan will ask each day, as far as can be said: every day of study is taken for kept. */

export interface ForecastDay {
  day: number;
  /** A day off: nothing is asked. */
  off: boolean;
  fresh: number;
  again: number;
  /** Minutes, rounded up. */
  minutes: number;
}

export interface Forecast {
  days: ForecastDay[];
  /** What is remembered of each question in the end. */
  memories: ReadonlyMap<number, Memory | null>;
}

/** What a memory is after its question was asked on a day. */
export type Learn = (memory: Memory | null, day: number) => Memory;

export interface ForecastStart {
  today: number;
  settings: PlanSettings;
  secondsToday: number;
  metToday: number;
}

/**
 * @param last the last day to tell of
 * @param learn how answers turn out; without it every one is right
 * @returns from today on; of today, what is left
 */
export function forecast(
  pool: readonly PlanCandidate[],
  start: ForecastStart,
  last: number,
  model: MemoryModel,
  learn: Learn = (memory, day) => model.after(memory, day, 3),
): Forecast {
  const { today, settings } = start;
  const ahead = new Map(pool.map((candidate) => [candidate.questionId, { ...candidate }]));
  const days: ForecastDay[] = [];
  for (let day = today; day <= last; day += 1) {
    if (day > today && isDayOff(settings, day)) {
      days.push({ day, off: true, fresh: 0, again: 0, minutes: 0 });
      continue;
    }
    const used = day === today ? start.secondsToday : 0;
    const left = settings.minutes * 60 - used;
    const sitting = { today: day, settings, secondsToday: used, metToday: day === today ? start.metToday : 0, seconds: left };
    // Time to spare is no duty: what does not press is left out.
    const planned =
      left <= 0
        ? []
        : planSitting([...ahead.values()], sitting, model, randomFrom(`forecast ${day}`)).filter(({ reason }) => reason !== 'early');
    let seconds = 0;
    for (const { questionId } of planned) {
      const candidate = ahead.get(questionId);
      if (candidate === undefined) continue;
      seconds += candidate.seconds;
      candidate.memory = learn(candidate.memory, day);
      candidate.surelyWrong = false;
    }
    const fresh = planned.filter(({ reason }) => reason === 'new').length;
    days.push({ day, off: false, fresh, again: planned.length - fresh, minutes: Math.ceil(seconds / 60) });
  }
  return { days, memories: new Map([...ahead].map(([questionId, { memory }]) => [questionId, memory])) };
}
