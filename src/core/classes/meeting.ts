import { weekdayOf } from '../plan/settings.js';

/** When a class meets next. */

export interface MeetingTime {
  /** 0 for Sunday to 6 for Saturday; null where it meets at no fixed day. */
  meetsOn: number | null;
  /** 19:30 */
  meetsAt: string | null;
}

/** A meeting that began this long ago is still on. */
const lastsMinutes = 150;

/**
 * @param today day number on the class's calendar
 * @param minute minutes since midnight there
 * @returns the day of the next meeting, or of the one that is on; null without a fixed day
 */
export function nextMeeting({ meetsOn, meetsAt }: MeetingTime, today: number, minute: number): number | null {
  if (meetsOn === null || meetsAt === null) return null;
  const ahead = (meetsOn - weekdayOf(today) + 7) % 7;
  const [hours, minutes] = meetsAt.split(':').map(Number) as [number, number];
  const over = ahead === 0 && minute > hours * 60 + minutes + lastsMinutes;
  return today + (over ? 7 : ahead);
}

const weekdays = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'] as const;

export const weekdayName = (day: number): string => weekdays[weekdayOf(day)] as string;
