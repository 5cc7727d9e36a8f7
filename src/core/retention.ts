/**
 * How long candidates are kept: so many months after the last visit, and never without a fortnight's notice. Days are day numbers
 * (days since 1970-01-01), in UTC, since people of many time zones share one night.
 */

export const keepChoices = [6, 12, 18, 24, 36] as const;
export const noticeDays = 14;
/** A server that was off for so long after the day gives notice anew: nobody could have come back meanwhile. */
export const lateDays = 14;

export interface KeptPerson {
  id: number;
  /** Of the last visit; of the first day where there was none. */
  visited: number;
  /** Asked to be kept until this day; null for never. */
  keepUntil: number | null;
  /** Of an exam that is planned; null for none. */
  examDay: number | null;
  /** Has a paper open. */
  sitting: boolean;
  /** Days on which notice was given and on which it runs out. */
  notice: { given: number; removeOn: number } | null;
}

export type Decision = 'nothing' | 'notice' | 'forget-notice' | 'remove';

/** The same day of the month so many months earlier; the last of that month where it has no such day. */
export function monthsBefore(day: number, months: number): number {
  const date = new Date(day * 86_400_000);
  const [year, month, of] = [date.getUTCFullYear(), date.getUTCMonth() - months, date.getUTCDate()];
  const last = new Date(Date.UTC(year, month + 1, 0)).getUTCDate();
  return Math.round(Date.UTC(year, month, Math.min(of, last)) / 86_400_000);
}

/** Whether somebody has been away long enough, and nothing speaks for keeping them. */
export function isOverdue(person: KeptPerson, today: number, months: number): boolean {
  if (person.visited >= monthsBefore(today, months)) return false;
  if (person.keepUntil !== null && person.keepUntil >= today) return false;
  return !person.sitting && (person.examDay === null || person.examDay < today);
}

/** What is done about a candidate tonight. */
export function decide(person: KeptPerson, today: number, months: number): Decision {
  const { notice } = person;
  if (!isOverdue(person, today, months)) return notice === null ? 'nothing' : 'forget-notice';
  if (notice === null) return 'notice';
  if (today < notice.removeOn || today < notice.given + noticeDays) return 'nothing';
  return today > notice.removeOn + lateDays ? 'notice' : 'remove';
}
