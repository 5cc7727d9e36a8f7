import { draw, type CompiledFamily, type Draw } from '../core/families/draw.js';
import { drawOptions, markNumber, markOption, shownOptions, type Mark, type ShownOption } from '../core/marking.js';
import type { Certainty } from '../core/question.js';
import { RungwiseError } from '../core/errors.js';
import type { Caution, Region } from '../core/syllabus.js';
import type { BankQuestion } from '../questions/index.js';
import { readQuantity } from '../../shared/numeric-answer/parse.js';
import type { AnswerForm } from './forms.js';

/** A bank question put to somebody: with its numbers drawn or its options in order. */
export interface PutQuestion {
  stem: string;
  /** Null when a number is to be typed. */
  options: ShownOption[] | null;
  /** Null for a fixed question. */
  draw: Draw | null;
  compiled: CompiledFamily | null;
  /** The question's own caution, for the page after the answer. */
  caution: Caution | null;
  /**
   * The caution beside the question. A fixed question's own caution often says what the key says ("get everyone out"),
   * so there the pack's general one stands; a family's never gives its number away.
   */
  strip: Caution | null;
}

export interface Given {
  given: string;
  certainty: Certainty;
  mark: Mark;
}

export interface Refusal {
  why: string;
  given: string;
}

type Marked = Pick<Given, 'given' | 'mark'>;

export function putQuestion(bank: BankQuestion, seed: number, region: Region): PutQuestion {
  if (bank.item.kind === 'single') {
    const { question } = bank.item;
    const caution = bank.caution(question.caution);
    return {
      stem: question.stem,
      options: shownOptions(question, seed),
      draw: null,
      compiled: null,
      caution,
      strip: caution === null ? null : (bank.caution('general') ?? caution),
    };
  }
  const compiled = bank.item.compiled(region);
  if (compiled === null) throw new RungwiseError('not-found', `family ${bank.code} is not for region ${region}`);
  const drawn = draw(compiled, seed);
  const caution = bank.caution(drawn.caution);
  return { stem: drawn.stem, options: drawOptions(drawn), draw: drawn, compiled, caution, strip: caution };
}

/** What a form says, marked; or why it cannot be marked, with what was typed. */
export function readGiven(put: PutQuestion, form: AnswerForm): Given | Refusal {
  const marked = put.options === null ? readNumber(put, form.value ?? '') : readOption(put.options, form.option ?? '', put.draw);
  if ('why' in marked) return marked;
  if (form.certainty === undefined)
    return { why: 'Say how sure you are: one of the three buttons hands the answer in.', given: marked.given };
  return { ...marked, certainty: form.certainty };
}

function readOption(options: ShownOption[], value: string, drawn: Draw | null): Marked | Refusal {
  const mark = markOption(options, value, drawn);
  return mark === null ? { why: 'Choose one of the answers first, then say how sure you are.', given: '' } : { given: value, mark };
}

function readNumber(put: PutQuestion, typed: string): Marked | Refusal {
  const drawn = put.draw as Draw;
  const reading = readQuantity(typed, drawn.key.unit);
  if (!reading.understood) return { why: reading.message, given: typed };
  return { given: typed, mark: markNumber(drawn, reading.value) };
}
