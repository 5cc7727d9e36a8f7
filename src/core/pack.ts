import { z } from 'zod';
import type { Drawing } from './drawing.js';
import { familySchema, type Family } from './families/schema.js';
import { fixedQuestionSchema, type FixedQuestion } from './questions/schema.js';
import { skillSchema, type Skill } from './skill.js';
import { blueprintSchema, cautionSchema, keySchema, objectiveSchema, regionSchema, sourceSchema, topicSchema } from './syllabus.js';
import type { Blueprint, Caution, Objective, Source, Topic } from './syllabus.js';

/** The format of a pack: a folder of YAML files, each with one top-level list (or, in pack.yaml, one mapping). */

const aimSchema = z.number().int().min(0).max(100);

export const packHeadSchema = z.strictObject({
  id: keySchema,
  title: z.string().trim().min(1).max(80),
  /** Semantic version of the whole pack. */
  version: z.string().regex(/^\d+\.\d+\.\d+$/, 'three numbers with points, such as 1.0.0'),
  /** SPDX licence identifier. */
  licence: z.string().regex(/^[A-Za-z0-9.+-]{2,40}$/, 'an SPDX licence identifier, such as CC-BY-SA-4.0'),
  language: z.string().regex(/^[a-z]{2}(-[A-Z]{2})?$/, 'a language tag such as en-GB'),
  authors: z.array(z.string().trim().min(1).max(80)).min(1).max(50),
  regions: z.array(regionSchema).min(1),
  summary: z.string().trim().min(1).max(600),
  /** How many fixed questions an objective of weight 1, 2 and 3 should have. */
  aims: z.tuple([aimSchema, aimSchema, aimSchema]).optional(),
});

/** What each kind of file may hold: the file's one top-level key, and the schema of its value. */
export const packFileSchemas = {
  pack: packHeadSchema,
  topics: z.array(topicSchema).max(60),
  objectives: z.array(objectiveSchema).max(400),
  cautions: z.array(cautionSchema).max(60),
  sources: z.array(sourceSchema).max(400),
  questions: z.array(fixedQuestionSchema).max(400),
  families: z.array(familySchema).max(60),
  blueprints: z.array(blueprintSchema).max(20),
  skills: z.array(skillSchema).max(60),
} as const;

export type PackHead = z.infer<typeof packHeadSchema>;
export type PackFileKind = keyof typeof packFileSchemas;

/** A pack read whole: every reference resolved to something that exists. */
export interface Pack {
  head: PackHead;
  topics: Topic[];
  objectives: Objective[];
  cautions: Caution[];
  sources: Source[];
  questions: FixedQuestion[];
  families: Family[];
  drawings: Drawing[];
  blueprints: Blueprint[];
  skills: Skill[];
}
