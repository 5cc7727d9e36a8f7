import { z } from 'zod';
import { readDate } from '../core/date-text.js';

/** What the form of the plan may hold. Dates are days of the calendar, as numbers. */

const date = (empty: boolean) =>
  z
    .string()
    .max(40)
    .transform((text, context) => {
      if (text.trim() === '' && empty) return null;
      const day = readDate(text);
      if (day === null) context.addIssue({ code: 'custom', message: 'This is no date. Write it like 2026-12-24 or 24 Dec 2026.' });
      return day;
    });

const mostDaysOff = 60;

export const planForm = z.object({
  exam: date(true),
  minutes: z
    .string()
    .trim()
    .regex(/^\d{1,3}$/, 'Write the minutes as a whole number, such as 10.')
    .transform(Number)
    .refine((minutes) => minutes >= 1 && minutes <= 180, 'A day of study has 1 to 180 minutes. Ten a day do more than an hour on Sunday.'),
  daysOff: z
    .string()
    .max(2000)
    .default('')
    .transform((text, context) => {
      const lines = text.split(/[\n,;]+/).filter((line) => line.trim() !== '');
      const days = lines.map(readDate);
      const wrong = lines[days.indexOf(null)];
      if (wrong !== undefined)
        context.addIssue({
          code: 'custom',
          message: `“${wrong.trim().slice(0, 40)}” is no date. Write one on each line, like 24 Dec 2026.`,
        });
      if (days.length > mostDaysOff)
        context.addIssue({ code: 'custom', message: `${mostDaysOff} days off are the most that can be kept.` });
      return days.filter((day): day is number => day !== null);
    }),
  paper: z.string().max(120).default(''),
});

/** Weekdays off, 0 for Sunday to 6: a ticked box sends its number. */
export function readWeekdays(body: unknown): number[] {
  const given = (body as Record<string, unknown> | null | undefined)?.['off'];
  const list = Array.isArray(given) ? given : [given];
  return [0, 1, 2, 3, 4, 5, 6].filter((weekday) => list.includes(String(weekday)));
}

export const calendarParams = z.object({ calendar: z.string().regex(/^\d{1,9}-\d{1,6}-[A-Za-z0-9_-]{22}\.ics$/) });
