import { z } from 'zod';
import { readLocal } from '../core/local-time.js';
import { regionSchema } from '../core/syllabus.js';
import { extraTime, paperName } from './forms.js';

/** What the forms of a tutor's papers may hold. */

const mostVersions = 60;

const moment = (timeZone: string) =>
  z
    .string()
    .max(30)
    .transform((text, context) => {
      const at = readLocal(text, timeZone);
      if (at === null) context.addIssue({ code: 'custom', message: 'This is no day and time. Write it like 2026-11-26 19:30.' });
      return new Date(at ?? 0);
    });

/** @param timeZone in which the tutor's times are meant */
export const setForm = (timeZone: string) =>
  z
    .object({
      id: z.uuid(),
      class: z
        .string()
        .regex(/^\d{1,9}$/)
        .transform(Number),
      paper: paperName,
      title: z.string().trim().min(1, 'Give it a name, such as Winter paper.').max(80, 'A name of 80 letters at most.'),
      region: regionSchema,
      versions: z
        .string()
        .trim()
        .regex(/^\d{1,2}$/, 'Write a whole number from 1 to 60.')
        .transform(Number)
        .refine((count) => count >= 1 && count <= mostVersions, 'From 1 to 60 versions can be made.'),
      /** Whether it can be sat on a screen; else it is only printed. */
      screen: z.literal('on').optional(),
      opens: moment(timeZone),
      closes: moment(timeZone),
    })
    .superRefine(({ opens, closes }, context) => {
      if (opens >= closes) context.addIssue({ code: 'custom', path: ['closes'], message: 'It would close before it opens.' });
      if (closes.getTime() - opens.getTime() > 92 * 86_400_000)
        context.addIssue({ code: 'custom', path: ['closes'], message: 'A paper can be open for three months at most.' });
    });

export const extraForm = z.object({
  member: z
    .string()
    .regex(/^\d{1,9}$/)
    .transform(Number),
  extra: extraTime,
});
