import type { Drawing } from '../drawing.js';
import type { Mark } from '../marking.js';
import type { QuestionOf } from '../questions/schema.js';
import { plainMark, type Entry, type PlaceTask, type Reading } from './task.js';

/** The place on a drawing to mark: one of several that carry letters. */

/** Places keep the pack's order, which goes with how they lie on the drawing. A part that the drawing has not is left out. */
export function showPlace(question: QuestionOf<'place'>, drawing: Drawing): PlaceTask {
  const places = question.places.flatMap(({ part: id, text, key, why }, index) => {
    const part = drawing.parts.find((candidate) => candidate.id === id);
    return part === undefined ? [] : [{ value: String(index), text, part, key: key === true, why: why ?? '' }];
  });
  return { kind: 'place', drawing, places };
}

export function readPlace(task: PlaceTask, { option }: Entry): Reading {
  if (!task.places.some(({ value }) => value === option))
    return { why: 'Choose one of the lettered places first, then say how sure you are.' };
  return { given: option, mark: markPlace(task, option) };
}

export function markPlace(task: PlaceTask, given: string): Mark {
  const right = task.places.some(({ value, key }) => key && value === given);
  return plainMark(right, right ? 1 : 0);
}
