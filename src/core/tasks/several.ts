import type { QuestionOf } from '../questions/schema.js';
import { randomFrom, shuffled } from '../random.js';
import { letterOf, listWords, plainMark, type Entry, type Reading, type SeveralTask } from './task.js';
import type { Mark } from '../marking.js';

/** Several may be true: each statement is judged by itself, and the score is the share judged right. */

export function showSeveral(question: QuestionOf<'several'>, seed: number): SeveralTask {
  const statements = question.statements.map(({ text, holds, why }, place) => ({ place, text, holds, why: why ?? '' }));
  return { kind: 'several', statements: shuffled(statements, randomFrom(`options ${question.id} ${seed}`)) };
}

/** The form sends `t` or `f` for each statement; kept as one letter for each, in the pack's order: `tfft`. */
export function readSeveral(task: SeveralTask, { parts }: Entry): Reading {
  const judged = (place: number): boolean => parts[place] === 't' || parts[place] === 'f';
  const open = task.statements.flatMap(({ place }, index) =>
    judged(place) ? [] : [{ letter: letterOf(index), at: `part-${place}-text` }],
  );
  const missing = listWords(open.map(({ letter }) => letter));
  if (open[0] !== undefined) return { why: `Say of every statement whether it is true. Not judged yet: ${missing}.`, at: open[0].at };
  const given = task.statements.map((_, place) => parts[place] ?? '').join('');
  return { given, mark: markSeveral(task, given) };
}

export function markSeveral(task: SeveralTask, given: string): Mark {
  const right = task.statements.filter(({ place, holds }) => given[place] === (holds ? 't' : 'f')).length;
  return plainMark(right === task.statements.length, right / task.statements.length);
}
