import { z } from 'zod';
import { keySchema, regionSchema } from '../core/syllabus.js';

/** What the addresses of calculators may hold. */

const typed = z.string().max(200);
const typedOnce = z.union([typed.transform((text) => [text]), z.array(typed).max(12)]);

export const listQuery = z.object({ q: typed.catch('') });

export const calculatorParams = z.object({ calculator: z.string().regex(/^[a-z0-9][a-z0-9-]{0,60}$/) });

/** The region by its name, and under the name of each input what was typed for it; a list may have several. */
export const calculatorQuery = z
  .record(z.string().max(40), typedOnce)
  .refine((record) => Object.keys(record).length <= 20)
  .catch({});

export const regionOf = (typedRegion: readonly string[] | undefined) => regionSchema.safeParse(typedRegion?.[0]).data ?? null;

export const tryParams = z.object({ calculator: calculatorParams.shape.calculator, family: keySchema });

export const tryQuery = z.object({
  seed: z.coerce.number().int().min(1).max(2_147_483_647).nullable().catch(null).default(null),
  form: z.enum(['typed', 'options']).catch('typed').default('typed'),
  region: regionSchema.nullable().catch(null).default(null),
  value: typed.nullable().catch(null).default(null),
  option: typed.nullable().catch(null).default(null),
});

export type TryQuery = z.infer<typeof tryQuery>;
