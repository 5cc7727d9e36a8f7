import { z } from 'zod';
import { keySchema, objectiveCodeSchema, regionSchema } from './syllabus.js';

/** The fixed questions of a bank. Families, whose numbers are fresh each time, are in families/schema.ts. */

const text = (max: number) => z.string().trim().min(1).max(max);

export const questionIdSchema = z
  .string()
  .regex(/^[A-Z]{2}-\d{2}-\d{3}$/, 'an objective code, a hyphen and three digits, such as LA-02-001');
export const revisionSchema = z.number().int().min(1).max(9999);
export const daySchema = z.string().regex(/^\d{4}-\d{2}-\d{2}$/, 'a day such as 2026-11-25');
export const demandSchema = z.enum(['recall', 'apply', 'judge']);

export const optionSchema = z.strictObject({
  text: text(240),
  /** True on the one right option; left out on the others. */
  key: z.literal(true).optional(),
  /** On a wrong option: why people pick it, and what harm it would do. */
  why: text(400).optional(),
});

export const singleQuestionSchema = z
  .strictObject({
    id: questionIdSchema,
    revision: revisionSchema,
    objective: objectiveCodeSchema,
    kind: z.literal('single'),
    demand: demandSchema,
    /** Only asked of candidates of these regions; left out: of all. */
    regions: z.array(regionSchema).min(1).optional(),
    stem: text(600),
    options: z.array(optionSchema).min(3).max(5),
    /** `fixed` keeps the options as written (numbers in order); otherwise they are shuffled by seed. */
    order: z.literal('fixed').optional(),
    explanation: text(900),
    sources: z.array(keySchema).min(1).max(6),
    caution: keySchema.optional(),
    checked: daySchema,
  })
  .superRefine((question, context) => {
    const keys = question.options.filter((option) => option.key === true).length;
    if (keys !== 1) context.addIssue({ code: 'custom', path: ['options'], message: `exactly one option must be the key, and ${keys} are` });
    question.options.forEach((option, index) => {
      if (option.key !== true && option.why === undefined) {
        context.addIssue({ code: 'custom', path: ['options', index, 'why'], message: 'a wrong option must say why people pick it' });
      }
    });
  });

export type SingleQuestion = z.infer<typeof singleQuestionSchema>;
export type Certainty = 'sure' | 'fairly' | 'guessing';
export const certainties = ['sure', 'fairly', 'guessing'] as const;
