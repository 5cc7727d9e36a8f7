import { RungwiseError } from '../core/errors.js';
import type { CompiledFamily } from '../core/families/draw.js';
import type { Mark } from '../core/marking.js';
import type { Certainty } from '../core/questions/schema.js';
import type { Caution, Region } from '../core/syllabus.js';
import { readEntry, showFamily, showFixed } from '../core/tasks/index.js';
import { plainMark, type Entry, type Task } from '../core/tasks/task.js';
import type { Drawing } from '../core/drawing.js';
import type { BankQuestion } from '../questions/index.js';
import { entryOf, type AnswerForm } from './forms.js';
import type { ItemRow } from './store.js';

/** A bank question put to somebody: with its numbers drawn or its parts in order. */
export interface PutQuestion {
  stem: string;
  task: Task;
  /** Null for a fixed question. */
  compiled: CompiledFamily | null;
  /** Shown with the question; that of a `place` question is in its task. */
  drawing: Drawing | null;
  /** The question's own caution, for the page after the answer. */
  caution: Caution | null;
  /**
   * The caution beside the question. A fixed question's own caution often says what the key says ("get everyone out"),
   * so there the pack's general one stands; a family's never gives its number away.
   */
  strip: Caution | null;
}

/** A question of a round as it stands before somebody. */
export interface AskedItem extends ItemRow {
  bank: BankQuestion;
  put: PutQuestion;
}

export interface Given {
  given: string;
  certainty: Certainty;
  mark: Mark;
  gaveUp: boolean;
}

/** Why a form could not be taken, with all that was entered. */
export interface Refusal {
  why: string;
  /** The id of the control that lacks something. */
  at: string;
  entry: Entry;
}

export function putQuestion(bank: BankQuestion, seed: number, region: Region): PutQuestion {
  if (bank.item.kind === 'fixed') {
    const { question, drawing } = bank.item;
    const caution = bank.caution(question.caution);
    const task = showFixed(question, seed, drawing);
    return {
      stem: question.stem,
      task,
      compiled: null,
      drawing: task.kind === 'place' ? null : drawing,
      caution,
      strip: caution === null ? null : (bank.caution('general') ?? caution),
    };
  }
  const compiled = bank.item.compiled(region);
  if (compiled === null) throw new RungwiseError('not-found', `family ${bank.code} is not for region ${region}`);
  const task = showFamily(compiled, seed);
  const caution = bank.caution(task.draw.caution);
  return { stem: task.draw.stem, task, compiled, drawing: null, caution, strip: caution };
}

const sayHowSure = 'Say how sure you are: one of the three buttons hands the answer in.';

/** What a form says, marked; or why it cannot be marked, with what was entered. */
export function readGiven(put: PutQuestion, form: AnswerForm): Given | Refusal {
  const entry = entryOf(form);
  if (form.certainty === 'unknown') {
    if (put.task.kind === 'number') return { given: '', certainty: 'guessing', mark: plainMark(false, 0), gaveUp: true };
    return { why: sayHowSure, at: 'certainty', entry };
  }
  const reading = readEntry(put.task, entry);
  if ('why' in reading) return { why: reading.why, at: reading.at ?? (put.task.kind === 'number' ? 'answer' : 'options'), entry };
  if (form.certainty === undefined) return { why: sayHowSure, at: 'certainty', entry };
  return { ...reading, certainty: form.certainty, gaveUp: false };
}
