import { z } from 'zod';

/** What a syllabus is made of: topics that hold objectives, with the sources and cautions both refer to. */

export const regionIds = ['uk', 'eu', 'na'] as const;
export const regionSchema = z.enum(regionIds);

/** What pages call a region: by its mains supply. */
export const regionWords: Readonly<Record<(typeof regionIds)[number], string>> = {
  uk: 'United Kingdom, 230 V',
  eu: 'Europe, 230 V',
  na: 'North America, 120 V',
};

/** How well a fact is founded. What is `memory` may stand in a pack for editors, but no candidate's answer may hang on it. */
export const basisSchema = z.enum(['read', 'read-secondary', 'computed', 'common-practice', 'memory']);

const text = (max: number) => z.string().trim().min(1).max(max);
export const keySchema = z.string().regex(/^[a-z][a-z0-9-]{0,39}$/, 'small letters, digits and hyphens, starting with a letter');
export const topicCodeSchema = z.string().regex(/^[A-Z]{2}$/, 'two capital letters, such as LA');
export const objectiveCodeSchema = z.string().regex(/^[A-Z]{2}-\d{2}$/, 'a topic code, a hyphen and two digits, such as LA-02');

/** One finding of the check that stands on purpose, and why. */
export const excusesSchema = z
  .array(z.strictObject({ rule: keySchema, reason: text(300) }))
  .min(1)
  .max(10);

export const sourceSchema = z.strictObject({
  id: keySchema,
  title: text(400),
  /** A short form for the title block of a question, such as "IEC 60479-1". */
  short: text(60),
  basis: basisSchema,
  note: text(600).optional(),
  excuses: excusesSchema.optional(),
});

export const cautionSchema = z.strictObject({
  id: keySchema,
  /** Which warning triangle goes beside it: the flash for electricity, the mark for all else. */
  sign: z.enum(['electric', 'general']),
  text: text(600),
});

export const topicSchema = z.strictObject({ code: topicCodeSchema, title: text(80), blurb: text(300) });

export const objectiveSchema = z.strictObject({
  code: objectiveCodeSchema,
  topic: topicCodeSchema,
  title: text(100),
  mustKnow: text(600),
  why: text(400),
  /** 1 ask now and then, 2 ask regularly, 3 core. */
  weight: z.union([z.literal(1), z.literal(2), z.literal(3)]),
  facts: z
    .array(z.strictObject({ text: text(600), source: keySchema, basis: basisSchema, note: text(600).optional() }))
    .min(1)
    .max(20),
  misconceptions: z.array(text(200)).max(12),
  caution: keySchema.optional(),
  excuses: excusesSchema.optional(),
});

/** A specification of papers: how many questions from each topic, and what passes. */
export const blueprintSchema = z.strictObject({
  id: keySchema,
  title: text(80),
  questions: z.number().int().min(1).max(200),
  passMark: z.number().int().min(1).max(200),
  minutes: z.number().int().min(1).max(600),
  /** By topic; together as many as `questions`. */
  shares: z.record(topicCodeSchema, z.number().int().min(0).max(200)),
});
export type Blueprint = z.infer<typeof blueprintSchema>;

export type Region = z.infer<typeof regionSchema>;
export type Source = z.infer<typeof sourceSchema>;
export type Caution = z.infer<typeof cautionSchema>;
export type Topic = z.infer<typeof topicSchema>;
export type Objective = z.infer<typeof objectiveSchema>;
