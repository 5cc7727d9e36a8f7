import { z } from 'zod';
import { excusesSchema, keySchema, objectiveCodeSchema, regionSchema } from '../syllabus.js';

/** What every fixed question has, of whatever kind. */

export const text = (max: number) => z.string().trim().min(1).max(max);

export const questionIdSchema = z
  .string()
  .regex(/^[A-Z]{2}-\d{2}-\d{3}$/, 'an objective code, a hyphen and three digits, such as LA-02-001');
export const revisionSchema = z.number().int().min(1).max(9999);
export const daySchema = z.string().regex(/^\d{4}-\d{2}-\d{2}$/, 'a day such as 2026-11-25');
export const demandSchema = z.enum(['recall', 'apply', 'judge']);

export const commonFields = {
  id: questionIdSchema,
  revision: revisionSchema,
  /** The first revision that asked the same: what people remember of it still counts. Left out: a new revision starts afresh. */
  sameSince: revisionSchema.optional(),
  objective: objectiveCodeSchema,
  demand: demandSchema,
  /** Only asked of candidates of these regions; left out: of all. */
  regions: z.array(regionSchema).min(1).optional(),
  stem: text(600),
  /** A drawing of the pack, shown with the question. */
  drawing: keySchema.optional(),
  explanation: text(900),
  sources: z.array(keySchema).min(1).max(6),
  caution: keySchema.optional(),
  checked: daySchema,
  excuses: excusesSchema.optional(),
} as const;

/** Of a wrong choice: why people pick it, and what harm it would do. */
export const whySchema = text(400);

/** The one right entry of a list, and a reason beside every other. */
export function checkKey(
  list: readonly { key?: true | undefined; why?: string | undefined }[],
  name: 'options' | 'places',
  context: z.RefinementCtx,
): void {
  const one = name.slice(0, -1);
  const keys = list.filter((entry) => entry.key === true).length;
  if (keys !== 1) context.addIssue({ code: 'custom', path: [name], message: `exactly one ${one} must be the key, and ${keys} are` });
  list.forEach((entry, index) => {
    if (entry.key !== true && entry.why === undefined) {
      context.addIssue({ code: 'custom', path: [name, index, 'why'], message: `a wrong ${one} must say why people pick it` });
    }
  });
}
