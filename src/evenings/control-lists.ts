import { sum, together } from '../core/evenings/hands.js';
import { keyLetter, lettersOf } from '../core/papers/sheet.js';
import type { HeldItem, HeldView } from './holding-service.js';
import type { ControlPage } from './page-types.js';
import { stateWords } from './parts.js';

/** Lists on the tutor's control: the hands, how each question stands, and what was chosen in all. */

/** What came back, with what was typed. */
export interface HandsTyped {
  values: readonly string[];
  why: string;
  /** The box that does not fit. */
  index: number;
}

export function handsPart(item: HeldItem, typed: HandsTyped | null): ControlPage['data']['hands'] {
  const letters = lettersOf(item.task);
  const kept = letters.map((_, index) => (item.hands.length === 0 ? '' : String(item.hands[index] ?? 0)));
  return {
    fields: letters.map((letter, index) => ({
      letter,
      id: `hand-${letter}`,
      name: `hand-${letter}`,
      value: typed?.values[index] ?? kept[index] ?? '',
      wrong: typed?.index === index,
    })),
    was: kept.join(','),
  };
}

/** Of phones and hands, how many had it right; null before the counts are to be known. */
function rightWords({ position, hands, task }: HeldItem, { phones }: HeldView): string | null {
  const counts = phones[position - 1];
  if (counts === null || counts === undefined) return null;
  const all = together(counts, hands);
  return sum(all) === 0 ? 'no answers' : `${all[keyLetter(task).charCodeAt(0) - 65] ?? 0} of ${sum(all)} right`;
}

export function listRow(item: HeldItem, view: HeldView): ControlPage['data']['list'][number] {
  const { position, bank, state } = item;
  return {
    href: `/bank/questions/${bank.questionId}`,
    position,
    code: bank.objective.code,
    objective: bank.objective.title,
    state: rightWords(item, view) ?? stateWords[state],
    current: position === view.head.place,
  };
}

export function resultRow(item: HeldItem, view: HeldView): ControlPage['data']['results'][number] {
  const { position, bank, hands, task } = item;
  const counts = together(view.phones[position - 1] ?? [], hands);
  const key = keyLetter(task);
  const letters = lettersOf(task).map((letter, index) => `${letter} ${counts[index] ?? 0}${letter === key ? ' (right)' : ''}`);
  return {
    href: `/bank/questions/${bank.questionId}`,
    position,
    code: bank.objective.code,
    objective: bank.objective.title,
    right: rightWords(item, view) ?? '',
    counts: letters.join(', '),
  };
}
