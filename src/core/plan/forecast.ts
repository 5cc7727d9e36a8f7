import type { MemoryModel } from '../memory.js';
import { randomFrom } from '../random.js';
import type { PlanCandidate } from './candidate.js';
import { planSitting } from './day.js';
import { isDayOff, type PlanSettings } from './settings.js';

/** What the plan will ask each day, as far as can be said: every answer is taken for right, and every day of study for kept. */

export interface ForecastDay {
  day: number;
  /** A day off: nothing is asked. */
  off: boolean;
  fresh: number;
  again: number;
  /** Minutes, rounded up. */
  minutes: number;
}

export interface ForecastStart {
  today: number;
  settings: PlanSettings;
  secondsToday: number;
  metToday: number;
}

/**
 * @param last the last day to tell of
 * @returns from today on; of today, what is left
 */
export function forecast(pool: readonly PlanCandidate[], start: ForecastStart, last: number, model: MemoryModel): ForecastDay[] {
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
      candidate.memory = model.after(candidate.memory, day, 3);
      candidate.surelyWrong = false;
    }
    const fresh = planned.filter(({ reason }) => reason === 'new').length;
    days.push({ day, off: false, fresh, again: planned.length - fresh, minutes: Math.ceil(seconds / 60) });
  }
  return days;
}
