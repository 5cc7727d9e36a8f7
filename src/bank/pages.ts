import type { Person } from '../accounts/index.js';
import { dayNumber, isoDay, shortDate } from '../core/calendar.js';
import type { TitleField } from '../core/page-parts.js';
import type { BankSearch } from './service.js';

/** Words that the pages of the bank share. */

export const dateOf = (date: Date, person: Pick<Person, 'timeZone'>): string =>
  shortDate(isoDay(dayNumber(date.getTime(), person.timeZone)));
export const field = (label: string, value: string, width: TitleField['width'], name = false): TitleField => {
  return { label, value, width, name, id: false, href: null };
};

/** What was looked for, written like the form's own address; nothing for what stands at its first value. */
export function searchParameters({ topicId, objectiveId, kind, text, retired, page }: BankSearch): URLSearchParams {
  const where = topicId !== null ? `t${topicId}` : objectiveId !== null ? `o${objectiveId}` : '';
  return new URLSearchParams({
    ...(where === '' ? {} : { where }),
    ...(kind === null ? {} : { kind }),
    ...(text === '' ? {} : { text }),
    ...(retired ? { retired: 'yes' } : {}),
    ...(page === 1 ? {} : { page: String(page) }),
  });
}

export const listAddress = (search: BankSearch): string => `/bank?${searchParameters(search).toString()}`.replace(/\?$/, '');
