import { z } from 'zod';
import { orderQuestionSchema, pairsQuestionSchema, placeQuestionSchema, severalQuestionSchema, singleQuestionSchema } from './kinds.js';

/** The fixed questions of a bank. Families, whose numbers are fresh each time, are in families/schema.ts. */

export const fixedQuestionSchema = z.discriminatedUnion('kind', [
  singleQuestionSchema,
  severalQuestionSchema,
  orderQuestionSchema,
  pairsQuestionSchema,
  placeQuestionSchema,
]);

export type FixedQuestion = z.infer<typeof fixedQuestionSchema>;
export type FixedKind = FixedQuestion['kind'];
export type QuestionOf<K extends FixedKind> = Extract<FixedQuestion, { kind: K }>;
export type SingleQuestion = QuestionOf<'single'>;

/** What pages call each kind. */
export const kindNames: Readonly<Record<FixedKind | 'numeric', string>> = {
  single: 'Single best answer',
  several: 'Several may be true',
  order: 'Put the steps in order',
  pairs: 'Match pairs',
  place: 'Mark the place on a drawing',
  numeric: 'Calculated, with fresh numbers',
};

export type Certainty = 'sure' | 'fairly' | 'guessing';
export const certainties = ['sure', 'fairly', 'guessing'] as const;

/** As an answer is recorded: on a paper nobody is asked how sure they are. */
export type RecordedCertainty = Certainty | 'unsaid';
