import { readQuantity } from '../../../shared/numeric-answer/parse.js';
import type { Drawing } from '../drawing.js';
import { draw, type CompiledFamily, type Draw } from '../families/draw.js';
import { drawOptions, markNumber, markOption, shownOptions, type Mark } from '../marking.js';
import type { FixedQuestion } from '../questions/schema.js';
import { markOrder, readOrder, showOrder } from './order.js';
import { markPairs, readPairs, showPairs } from './pairs.js';
import { markPlace, readPlace, showPlace } from './place.js';
import { markSeveral, readSeveral, showSeveral } from './several.js';
import type { ChoiceTask, Entry, NumberTask, Reading, Task } from './task.js';

/** One way in for all kinds of question: show it, read what came back, mark what was kept. */

/** @param drawing the drawing that the question names; a `place` question cannot be shown without it */
export function showFixed(question: FixedQuestion, seed: number, drawing: Drawing | null): Task {
  switch (question.kind) {
    case 'single':
      return { kind: 'choice', options: shownOptions(question, seed), draw: null };
    case 'several':
      return showSeveral(question, seed);
    case 'order':
      return showOrder(question, seed);
    case 'pairs':
      return showPairs(question, seed);
    case 'place':
      if (drawing === null) throw new Error(`question ${question.id} has lost its drawing ${question.drawing}`);
      return showPlace(question, drawing);
  }
}

export function showFamily(compiled: CompiledFamily, seed: number): (ChoiceTask | NumberTask) & { draw: Draw } {
  const drawn = draw(compiled, seed);
  const options = drawOptions(drawn);
  return options === null ? { kind: 'number', draw: drawn } : { kind: 'choice', options, draw: drawn };
}

export function readEntry(task: Task, entry: Entry): Reading {
  switch (task.kind) {
    case 'choice':
      return readChoice(task, entry);
    case 'number':
      return readNumber(task, entry);
    case 'several':
      return readSeveral(task, entry);
    case 'order':
      return readOrder(task, entry);
    case 'pairs':
      return readPairs(task, entry);
    case 'place':
      return readPlace(task, entry);
  }
}

/** The mark of an answer as it was kept; null when it says nothing of this task, such as an option that is not offered. */
export function markGiven(task: Task, given: string): Mark | null {
  switch (task.kind) {
    case 'choice':
      return markOption(task.options, given, task.draw);
    case 'number': {
      const reading = readQuantity(given, task.draw.key.unit);
      return reading.understood ? markNumber(task.draw, reading.value) : null;
    }
    case 'several':
      return markSeveral(task, given);
    case 'order':
      return markOrder(task, given);
    case 'pairs':
      return markPairs(task, given);
    case 'place':
      return markPlace(task, given);
  }
}

function readChoice(task: ChoiceTask, { option }: Entry): Reading {
  const mark = markOption(task.options, option, task.draw);
  return mark === null ? { why: 'Choose one of the answers first, then say how sure you are.' } : { given: option, mark };
}

function readNumber(task: NumberTask, { value }: Entry): Reading {
  const reading = readQuantity(value, task.draw.key.unit);
  return reading.understood ? { given: value, mark: markNumber(task.draw, reading.value) } : { why: reading.message };
}
