import { readDate } from './date-text.js';

/** When a practical skill may be signed: all of it was seen, on a day that has been and is not long past. */

/** What somebody wants to sign, as it was typed. */
export interface SignOffWish {
  /** Places of the criteria that are ticked, from 0. */
  ticked: readonly number[];
  seenOn: string;
  remarks: string;
}

export interface SignOffFault {
  field: 'criteria' | 'seenOn' | 'remarks';
  why: string;
}

export type SignOffReading = { ok: true; seenDay: number; remarks: string } | { ok: false; missing: number[]; faults: SignOffFault[] };

export const longestRemark = 300;
/** How many days ago a skill may have been seen. */
export const oldestDays = 366;

/**
 * @param criteria how many the skill has
 * @param today day number in the tutor's calendar
 */
export function readSignOff({ ticked, seenOn, remarks }: SignOffWish, criteria: number, today: number): SignOffReading {
  const missing = Array.from({ length: criteria }, (_, at) => at).filter((at) => !ticked.includes(at));
  const seenDay = readDate(seenOn);
  const text = tidied(remarks);
  const whys: [SignOffFault['field'], string | null][] = [
    ['criteria', missing.length === 0 ? null : missingWords(missing.length)],
    ['seenOn', dayWhy(seenDay, today)],
    ['remarks', lengthWhy(text)],
  ];
  const faults = whys.flatMap(([field, why]) => (why === null ? [] : [{ field, why }]));
  return faults.length === 0 && seenDay !== null ? { ok: true, seenDay, remarks: text } : { ok: false, missing, faults };
}

/** Why a signature is withdrawn: a text that says something. */
export function readReason(reason: string): { ok: true; reason: string } | { ok: false; why: string } {
  const text = tidied(reason);
  if (text === '') return { ok: false, why: 'Write why it is withdrawn, such as “signed for somebody else by mistake”.' };
  const why = lengthWhy(text);
  return why === null ? { ok: true, reason: text } : { ok: false, why };
}

function missingWords(count: number): string {
  const what = count === 1 ? 'One criterion is' : `${count} criteria are`;
  return `${what} not ticked. Sign when all of it was seen; what you filled in is still here.`;
}

function dayWhy(day: number | null, today: number): string | null {
  if (day === null) return 'This is no date. Write it like 2026-11-26 or 26 Nov 2026.';
  if (day > today) return 'That day has not come yet. Write the day on which it was seen.';
  return day < today - oldestDays ? 'That is more than a year ago. Let it be shown again, and sign what you see now.' : null;
}

function lengthWhy(text: string): string | null {
  const letters = [...text].length;
  return letters <= longestRemark ? null : `That has ${letters} letters, and ${longestRemark} fit. Shorten it.`;
}

/** With line ends of one kind, and without what no page can show. */
const tidied = (text: string): string =>
  text
    .normalize('NFC')
    .replace(/\r\n?/g, '\n')
    .replace(/[^\P{Cc}\n]/gu, ' ')
    .trim();
