import { z } from 'zod';
import { rowNumber } from '../core/address-number.js';
import { isoDay } from '../core/calendar.js';
import { readDate, readTime } from '../core/date-text.js';
import { isUnfit, nameText, sameName, tidyName } from '../core/names.js';
import { regionSchema } from '../core/syllabus.js';

/** What the forms about a class and its people may hold. */

export const classParams = z.object({ class: rowNumber });
export const personParams = z.object({ class: rowNumber, person: rowNumber });

const nothing = (text: string): boolean => text.trim() === '';

export const classForm = z
  .object({
    name: nameText(60, 'Give the class a name, such as Thursday beginners.', 'That name is too long. Sixty letters are enough.'),
    exam: z
      .string()
      .max(40, 'This is no date. Write it like 2026-12-24 or 24 Dec 2026.')
      .transform((text, context) => {
        const day = readDate(text);
        if (day === null && !nothing(text))
          context.addIssue({ code: 'custom', message: 'This is no date. Write it like 2026-12-24 or 24 Dec 2026.' });
        return day === null ? null : isoDay(day);
      }),
    paper: z
      .string()
      .max(120)
      .transform((text) => (nothing(text) ? null : text)),
    meetsOn: z
      .string()
      .regex(/^[0-6]?$/)
      .transform((text) => (text === '' ? null : Number(text))),
    meetsAt: z
      .string()
      .max(20, 'This is no time of day. Write it like 19:30.')
      .transform((text, context) => {
        const time = readTime(text);
        if (time === null && !nothing(text)) context.addIssue({ code: 'custom', message: 'This is no time of day. Write it like 19:30.' });
        return time;
      }),
  })
  .superRefine(({ meetsOn, meetsAt }, context) => {
    if (meetsOn !== null && meetsAt === null)
      context.addIssue({ code: 'custom', path: ['meetsAt'], message: 'Write the time too, such as 19:30, or choose no fixed day.' });
    if (meetsOn === null && meetsAt !== null)
      context.addIssue({ code: 'custom', path: ['meetsOn'], message: 'Choose the day too, or leave the time empty.' });
  });

export const newClassForm = z.object({ startToken: z.uuid() });

const mostAtOnce = 30;
const longestName = 40;

/** One name a line; empty lines count for nothing. Two with one name could not be told apart by their slips. */
const names = z
  .string()
  .max(4000, 'That is too long. Up to thirty names can be added at once.')
  .transform((text, context) => {
    const lines = text.split(/\r\n|\r|\n/).map(tidyName);
    const given = lines.flatMap((name, index) => (name === '' ? [] : [{ name, line: index + 1 }]));
    const why = whyOfNames(given);
    if (why !== null) context.addIssue({ code: 'custom', message: why });
    return given.map(({ name }) => name);
  });

function whyOfNames(given: readonly { name: string; line: number }[]): string | null {
  if (given.length === 0) return 'Write a name, or several, one on each line.';
  if (given.length > mostAtOnce) return `Those are ${given.length} names. Up to thirty can be added at once.`;
  const long = given.find(({ name }) => [...name].length > longestName);
  if (long !== undefined) return `The name on line ${long.line} is too long. Forty letters are enough.`;
  const strange = given.find(({ name }) => isUnfit(name));
  if (strange !== undefined) return `The name on line ${strange.line} holds a sign that cannot be shown. Use letters, digits and spaces.`;
  const twice = given.find(({ name }, index) => given.findIndex((other) => sameName(other.name, name)) < index);
  return twice === undefined ? null : `“${twice.name}” stands there twice. Tell them apart, such as by the first letter of the surname.`;
}

export const addForm = z.object({ names, region: regionSchema, token: z.uuid() });
export const tutorForm = z.object({ tutor: rowNumber });
export const codeForm = z.object({ what: z.enum(['new', 'keep', 'close']), days: z.enum(['1', '7', '30']).transform(Number) });
export const endForm = z.object({ what: z.enum(['end', 'again']) });
export const moveForm = z.object({ to: rowNumber });

/** When the last slip was made, as the page that the form stands on had it: empty for never. */
export const slipForm = z.object({
  before: z.union([z.literal('').transform(() => null), z.iso.datetime().transform((text) => new Date(text))]),
});
