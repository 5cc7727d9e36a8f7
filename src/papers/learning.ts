import { randomUUID } from 'node:crypto';
import type { LockedMemory, PaperAnswer } from '../answers/index.js';
import type { MemoryModel } from '../core/memory.js';
import { valueOfLetter } from '../core/papers/sheet.js';
import { dueDayOf } from '../core/plan/value.js';
import { paperRating } from '../core/rating.js';
import { markGiven } from '../core/tasks/index.js';
import { memoryOf } from '../study/index.js';
import type { SheetItem } from './sheet-item.js';

/** What one letter for an answer is worth, and what it teaches the memory. */

export const isRight = ({ task }: Pick<SheetItem, 'task'>, letter: string): boolean => {
  const value = valueOfLetter(task, letter);
  return value !== null && markGiven(task, value)?.right === true;
};

export interface LetterAnswer {
  letter: string;
  /** The day in the candidate's own calendar, and that of the exam. */
  day: number;
  examDay: number | null;
  answeredAt: Date;
}

/**
 * @param before held until the transaction ends; undefined where the question is not asked of this person
 * @returns null where there is nothing to learn: not asked of this person, or the memory has begun afresh with a newer text of the question
 */
export function learnt(model: MemoryModel, item: SheetItem, answer: LetterAnswer, before: LockedMemory | undefined): PaperAnswer | null {
  if (before === undefined) return null;
  const memory = memoryOf(before);
  if (memory === null && item.revision < before.currentRevision) return null;
  // A letter that the question does not have, which our pages never send, is kept as no answer.
  const given = valueOfLetter(item.task, answer.letter) ?? '';
  const expectedRecall = memory === null ? null : model.recall(memory, answer.day);
  const mark = markGiven(item.task, given);
  // One update a day: what was answered today already has moved.
  const rating = memory !== null && memory.lastDay >= answer.day ? null : paperRating(mark?.right === true, expectedRecall);
  const moved = rating === null ? memory : model.after(memory, answer.day, rating);
  return {
    token: randomUUID(),
    personId: before.personId,
    questionId: item.questionId,
    revision: item.revision,
    seed: item.seed,
    given,
    right: mark?.right === true,
    tellTale: mark?.tellTales[0]?.name ?? null,
    rating,
    day: answer.day,
    answeredAt: answer.answeredAt,
    expectedRecall,
    before,
    after: {
      stability: moved?.stability ?? null,
      difficulty: moved?.difficulty ?? null,
      lastDay: moved?.lastDay ?? null,
      dueDay: rating === null || moved === null ? before.dueDay : dueDayOf(moved, item.bank.objective.weight, answer.examDay, model),
    },
  };
}
