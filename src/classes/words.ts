import { dayNumber, dayWords } from '../core/calendar.js';
import { weekdayName } from '../core/classes/meeting.js';
import { counted } from '../core/words.js';
import type { ClassHead } from './head-store.js';

/** What several pages of a class say in the same words. */

/** Days since somebody was here, in words. */
export function seenWords(days: number | null): string {
  if (days === null) return 'never yet';
  if (days <= 0) return 'today';
  return days === 1 ? 'yesterday' : `${days} days ago`;
}

/** Whoever was last here so many days ago is asked after. */
export const awayDays = 7;

export const daysSince = (seenAt: Date | null, today: number, timeZone: string): number | null =>
  seenAt === null ? null : Math.max(0, today - dayNumber(seenAt.getTime(), timeZone));

/** `Thursdays, 19:30`, or nothing. */
export const meetingTimes = ({ meetsOn, meetsAt }: Pick<ClassHead, 'meetsOn' | 'meetsAt'>): string | null =>
  // Day 3 was a Sunday.
  meetsOn === null ? null : `${weekdayName(meetsOn + 3)}s, ${meetsAt ?? ''}`;

/** The day of the exam as a number; null where none is set. */
export const examDayOf = ({ examOn }: Pick<ClassHead, 'examOn'>): number | null =>
  examOn === null ? null : Math.round(Date.parse(examOn) / 86_400_000);

export function examWords(head: Pick<ClassHead, 'examOn'>): string {
  const day = examDayOf(head);
  return day === null ? 'no exam date yet' : `exam on ${dayWords(day)}`;
}

/** For a title block. */
export function examField(head: Pick<ClassHead, 'examOn'>): string {
  const day = examDayOf(head);
  return day === null ? 'no date yet' : dayWords(day);
}

export const candidates = (count: number): string => counted(count, 'candidate');

/** What must be done first, where the class works towards no paper, or there is none. */
export function paperNote(
  head: ClassHead,
  paper: { chosen: boolean; title: string } | null,
): { text: string; href: string; label: string } | null {
  if (paper === null)
    return {
      text: 'No pack on this server has a make-up of papers, so nothing can be told of passing.',
      href: '/packs',
      label: 'Look at the packs',
    };
  if (paper.chosen) return null;
  return {
    text: `No paper is chosen for this class yet. Until one is, figures are for “${paper.title}”.`,
    href: `/classes/${head.classId}/people`,
    label: 'Choose the paper',
  };
}
