import { z } from 'zod';
import type { Entry } from '../core/tasks/task.js';
import { certainties } from '../core/questions/schema.js';

/** What the forms of study may hold. */

const minutes = z
  .string()
  .regex(/^\d{1,2}$/)
  .transform(Number)
  .refine((value) => value <= 60);

export const roundForm = z.union([
  /** 0 for just one question. */
  z.object({ round: z.uuid(), minutes }),
  /** A pack's slug and an objective of it, parted by a stroke. */
  z.object({ round: z.uuid(), objective: z.string().regex(/^[a-z0-9-]{1,60}\/[A-Za-z0-9-]{1,40}$/) }),
]);

export type RoundForm = z.infer<typeof roundForm>;

/** A question has six parts at most: statements, steps or pairs. */
const partNames = [0, 1, 2, 3, 4, 5].map((number) => `part-${number}`);
const part = z.string().max(8).optional();

export const answerForm = z.object({
  token: z.uuid(),
  /** A chosen option. Missing when none was chosen: the form then comes back. */
  option: z.string().max(40).optional(),
  /** A typed number, as typed. */
  value: z.string().max(200).optional(),
  /** `unknown`: a number is not known, and the working is wanted. */
  certainty: z.enum([...certainties, 'unknown']).optional(),
  ...Object.fromEntries(partNames.map((name) => [name, part])),
});

/** The fields of a form as the kinds of question read them. */
export function entryOf(form: AnswerForm): Entry {
  const fields = form as Readonly<Record<string, string | undefined>>;
  return { option: form.option ?? '', value: form.value ?? '', parts: partNames.map((name) => fields[name] ?? '') };
}

export const tokenParams = z.object({ token: z.uuid() });
export const roundParams = z.object({ round: z.uuid() });

export type AnswerForm = z.infer<typeof answerForm>;
