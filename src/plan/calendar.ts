import { createHmac, timingSafeEqual } from 'node:crypto';
import ical, { ICalCalendarMethod } from 'ical-generator';
import { isoDay } from '../core/calendar.js';
import { counted } from '../core/words.js';
import type { ForecastDay } from '../core/plan/forecast.js';

/** The plan as a calendar that other programs subscribe to (iCalendar, RFC 5545). Its address is the only key to it. */

/** @returns the last part of the address: whose it is, which of that person's addresses, and a seal that nobody can guess */
export function calendarName(secret: Uint8Array, personId: number, calendarKey: number): string {
  return `${personId}-${calendarKey}-${sealOf(secret, personId, calendarKey)}.ics`;
}

/** Whose calendar a name stands for; null when its seal is not ours. */
export function readCalendarName(secret: Uint8Array, name: string): { personId: number; calendarKey: number } | null {
  const [, person, key, seal] = /^(\d+)-(\d+)-([A-Za-z0-9_-]{22})\.ics$/.exec(name) ?? [];
  if (person === undefined || key === undefined || seal === undefined) return null;
  const right = sealOf(secret, Number(person), Number(key));
  return timingSafeEqual(Buffer.from(right), Buffer.from(seal)) ? { personId: Number(person), calendarKey: Number(key) } : null;
}

const sealOf = (secret: Uint8Array, personId: number, calendarKey: number): string =>
  createHmac('sha256', secret).update(`calendar ${personId} ${calendarKey}`).digest('base64url').slice(0, 22);

export interface CalendarPlan {
  /** Tells one person's events from another's; nothing can be read from it. */
  id: string;
  days: readonly ForecastDay[];
  examDay: number | null;
  now: Date;
}

/** All-day events: one for each day of study, and the exam. No name stands in it. */
export function calendarOf({ id, days, examDay, now }: CalendarPlan): string {
  const calendar = ical({
    name: 'Rungwise',
    prodId: { company: 'Rungwise', product: 'Study plan', language: 'EN' },
    method: ICalCalendarMethod.PUBLISH,
  });
  calendar.ttl(60 * 60 * 12);
  const add = (day: number, what: string, summary: string, description: string): void => {
    const start = new Date(`${isoDay(day)}T00:00:00Z`);
    const end = new Date(start.getTime() + 86_400_000);
    calendar.createEvent({ id: `${what}-${isoDay(day)}-${id}@rungwise`, start, end, allDay: true, stamp: now, summary, description });
  };
  for (const { day, fresh, again, minutes } of days) {
    const count = fresh + again;
    if (count > 0) add(day, 'study', `Rungwise: ${counted(count, 'question')}, about ${minutes} min`, `${fresh} new, ${again} met before.`);
  }
  if (examDay !== null) add(examDay, 'exam', 'Exam', 'Good luck.');
  return calendar.toString();
}
