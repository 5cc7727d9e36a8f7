import type { AnswerRow } from '../answers/index.js';
import type { Person } from '../accounts/index.js';
import type { Rating } from '../core/memory.js';
import type { RatedAnswer } from '../core/rating.js';
import { hasParts } from '../core/tasks/task.js';
import type { AskedItem, Given } from './put-question.js';
import type { ItemWithMemory } from './store.js';

/** The line of the record that an answer becomes. */
export function writtenAnswer(
  person: Person,
  asked: AskedItem,
  given: Given,
  rated: RatedAnswer,
  rating: Rating | null,
  day: number,
  now: Date,
): AnswerRow {
  return {
    token: asked.token,
    personId: person.id,
    questionId: asked.questionId,
    revision: asked.revision,
    seed: asked.seed,
    region: asked.region,
    given: given.given,
    certainty: given.certainty,
    right: rated.right,
    score: hasParts(asked.put.task) ? given.mark.score : null,
    tellTale: given.mark.tellTales[0]?.name ?? null,
    rating,
    day,
    answeredAt: now,
    expectedRecall: rated.expectedRecall,
  };
}

/** A family moves its memory once a day; a typed number that was wrong has one fresh draw, in this round or a later one of the day. */
export function stageOf(item: ItemWithMemory, asked: AskedItem, day: number): RatedAnswer['stage'] {
  if (asked.bank.item.kind !== 'numeric') return 'first';
  if (item.lastDay === day) return 'practice';
  return item.retryOf !== null || item.retryDay === day ? 'fresh' : 'first';
}
