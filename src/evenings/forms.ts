import { z } from 'zod';
import { rowNumber } from '../core/address-number.js';
import { mostQuestions } from '../core/evenings/choose.js';
import { refusals, steps } from '../core/evenings/steps.js';
import { mostTyped } from '../core/evenings/wishes.js';
import { mostLetters } from '../core/papers/sheet.js';
import { regionSchema } from '../core/syllabus.js';

/** What the forms and addresses of class evenings may hold. */

const place = z
  .string()
  .regex(/^\d{1,2}$/)
  .transform(Number);
const letters = Array.from({ length: mostLetters }, (_, index) => String.fromCharCode(65 + index));

export const classParams = z.object({ class: rowNumber });
export const heldParams = z.object({ class: rowNumber, evening: z.uuid() });
export const joinedParams = z.object({ evening: z.uuid() });
export const reviewParams = z.object({ evening: z.uuid(), place });

/** `?questions=12,7,3`: numbers of questions that the form begins with; anything else is no wish. */
export const askedQuery = z.object({
  questions: z
    .string()
    .regex(/^\d{1,9}(,\d{1,9}){0,59}$/)
    .transform((text) => [...new Set(text.split(',').map(Number))])
    .catch([]),
});

export const eveningForm = z.object({
  id: z.uuid(),
  title: z.string().trim().min(1, 'Give it a name, such as Ladders and fuses.').max(80, 'A name of 80 letters at most.'),
  region: regionSchema,
  questions: z.string().max(mostTyped, `That is too long: name ${mostQuestions} questions at most.`),
  count: z
    .string()
    .trim()
    .regex(/^\d{1,3}$/, `Write a whole number from 1 to ${mostQuestions}.`)
    .transform(Number)
    .refine((count) => count >= 1 && count <= mostQuestions, `An evening has from 1 to ${mostQuestions} questions.`),
});

/** Codes of the topics that are ticked, each a field of its own. */
export const tickedTopics = (body: unknown): string[] =>
  Object.entries((body ?? {}) as Record<string, unknown>).flatMap(([name, value]) => {
    const code = /^topic-([A-Z]{2})$/.exec(name)?.[1];
    return code === undefined || value !== 'on' ? [] : [code];
  });

export const stepForm = z.object({ do: z.enum([...steps, 'hands']), seen: place, was: z.string().max(40).default('') });
export const saidQuery = z.object({ said: z.enum(refusals).optional().catch(undefined) });

/** The boxes of the hands as typed, one for each letter that the page had; empty where it had none. */
export function typedHands(body: unknown): string[] {
  const given = (body ?? {}) as Record<string, unknown>;
  return letters.flatMap((letter) => {
    const value = given[`hand-${letter}`];
    return typeof value === 'string' ? [value.slice(0, 40)] : [];
  });
}

export const choiceForm = z.object({ seen: place, choice: z.string().regex(new RegExp(`^[${letters.join('')}]$`)) });
export const lateQuery = z.object({
  late: z.enum(['not-open', 'recorded']).optional().catch(undefined),
  choice: z
    .string()
    .regex(/^[A-Z]$/)
    .optional()
    .catch(undefined),
});
