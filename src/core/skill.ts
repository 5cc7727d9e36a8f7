import { z } from 'zod';
import { daySchema, text } from './questions/fields.js';
import { keySchema, objectiveCodeSchema, regionSchema } from './syllabus.js';

/** A practical skill that a candidate shows and a tutor sees: what is needed, what must be seen, and what ends it at once. */
export const skillSchema = z.strictObject({
  id: keySchema,
  title: text(80),
  objectives: z.array(objectiveCodeSchema).min(1).max(8),
  /** To show it. */
  minutes: z.number().int().min(1).max(120),
  /** What the tutor needs on the table. */
  brings: z.array(text(160)).min(1).max(12),
  /** Short sentences on how to show it at a meeting. */
  showing: z.array(text(300)).min(1).max(4),
  /** Each a thing that one can see the candidate do, or hear them say. */
  criteria: z
    .array(z.strictObject({ text: text(240), why: text(300) }))
    .min(3)
    .max(8),
  /** What ends the showing at once, whatever was seen before. */
  stop: text(300).optional(),
  caution: keySchema,
  sources: z.array(keySchema).min(1).max(8),
  /** Where it holds; left out: everywhere. */
  regions: z.array(regionSchema).min(1).optional(),
  checked: daySchema,
});

export type Skill = z.infer<typeof skillSchema>;
