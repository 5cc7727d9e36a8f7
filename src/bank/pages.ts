import type { Person } from '../accounts/index.js';
import { dayNumber, isoDay, shortDate } from '../core/calendar.js';
import type { TitleField } from '../core/page-parts.js';

/** Words that the pages of the bank share. */

export const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;
export const dateOf = (date: Date, person: Pick<Person, 'timeZone'>): string =>
  shortDate(isoDay(dayNumber(date.getTime(), person.timeZone)));
export const field = (label: string, value: string, width: TitleField['width'], name = false): TitleField => {
  return { label, value, width, name, id: false, href: null };
};

export const shortened = (text: string): string => {
  const line = text.replace(/\s+/g, ' ');
  return line.length <= 120 ? line : `${line.slice(0, 117).trimEnd()}…`;
};
