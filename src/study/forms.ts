import { z } from 'zod';
import { certainties } from '../core/question.js';

/** What the forms of study may hold. */

export const roundLengths = ['0', '5', '10', '20'] as const;

export const roundForm = z.object({
  round: z.uuid(),
  minutes: z.enum(roundLengths).transform(Number),
});

export const answerForm = z.object({
  token: z.uuid(),
  /** A chosen option. Missing when none was chosen: the form then comes back. */
  option: z.string().max(40).optional(),
  /** A typed number, as typed. */
  value: z.string().max(200).optional(),
  certainty: z.enum(certainties).optional(),
});

export const tokenParams = z.object({ token: z.uuid() });
export const roundParams = z.object({ round: z.uuid() });

export type AnswerForm = z.infer<typeof answerForm>;
