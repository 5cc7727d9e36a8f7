import { isoDay, dayNumber } from '../core/calendar.js';
import { readLocal } from '../core/local-time.js';

/** When a job is to run: each whole stretch of seconds, or once a day at an hour of the club's own clock. */
export type Every = { seconds: number } | { dailyAt: string };

/**
 * Where the slot of time begins that `now` lies in, in milliseconds since 1970. All servers agree on it, so that each slot
 * is run once. A server that was switched off over night finds the night's slot waiting when it starts.
 * @param timeZone of the club, for an hour of the day, which should not be one that a change of clocks skips: that night has no slot
 */
export function slotOf(every: Every, now: number, timeZone: string): number {
  if ('seconds' in every) return now - (now % (every.seconds * 1000));
  const today = dayNumber(now, timeZone);
  for (const day of [today, today - 1, today - 2]) {
    const slot = readLocal(`${isoDay(day)}T${every.dailyAt}`, timeZone);
    if (slot !== null && slot <= now) return slot;
  }
  throw new RangeError(`${every.dailyAt} is no hour of the day`);
}
