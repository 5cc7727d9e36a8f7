import { sum, together } from '../core/evenings/hands.js';
import type { QuestionState } from '../core/evenings/steps.js';
import { isTooFew } from '../core/group-figures.js';
import { workingPart } from '../core/outcome-parts.js';
import { keyLetter, lettersOf } from '../core/papers/sheet.js';
import type { CautionPart } from '../core/page-parts.js';
import type { Region } from '../core/syllabus.js';
import { answeredPart, keyWords } from '../core/tasks/answered-part.js';
import { counted } from '../core/words.js';
import { optionsOf, sheetDrawing, type SheetItem } from '../papers/index.js';
import { cautionPart } from '../study/index.js';
import type { CountsPart, KeyPart, QuestionPart } from './page-types.js';

/** Parts that several pages of an evening share. */

/** The question as it is asked: nothing in it tells the key. */
export const questionPart = (item: SheetItem): QuestionPart => ({
  stem: item.stem,
  drawing: sheetDrawing(item),
  options: optionsOf(item),
});

/** @param given the answer as it is kept; null for the key alone */
export function keyPart(item: SheetItem, region: Region, given: string | null): KeyPart {
  const { bank, task } = item;
  const compiled = bank.item.kind === 'numeric' ? bank.item.compiled(region) : null;
  const draw = task.kind === 'choice' ? task.draw : null;
  return {
    // The words for a place begin with its letter already.
    fact: task.kind === 'place' ? keyWords(task) : `${keyLetter(task)}: ${keyWords(task)}`,
    answered: answeredPart(task, item.drawing, given),
    explanation: bank.item.kind === 'fixed' ? bank.item.question.explanation : null,
    working: compiled === null || draw === null ? null : workingPart(compiled, draw),
  };
}

/** Before the key is shown a fixed question has the pack's general caution, since its own often says what the key says. */
export function cautionOf(item: SheetItem, shown: boolean): CautionPart | null {
  const own = shown || item.bank.item.kind === 'numeric';
  return cautionPart(own ? item.caution : item.bank.caution('general'));
}

/** @param phones by option @param hands the same, or empty */
export function countsPart({ task }: SheetItem, phones: readonly number[], hands: readonly number[]): CountsPart {
  const counts = together(phones, hands);
  // Against all who answered: a bar that is full says everybody.
  const all = Math.max(1, sum(counts));
  const rows = lettersOf(task).map((letter, index) => {
    const count = counts[index] ?? 0;
    return { letter, count, width: `${Math.round((count / all) * 100)}%`, key: letter === keyLetter(task) };
  });
  return { rows, total: totalWords(sum(phones), sum(hands)) };
}

/**
 * What may stand before the class. Hands everybody has seen; choices on phones are counted only from five on, since fewer tell who chose
 * what. The tutor has them all on the control page. @returns no rows where nothing may be counted
 */
export function wallCounts(item: SheetItem, phones: readonly number[], hands: readonly number[]): CountsPart {
  const onPhones = sum(phones);
  if (!isTooFew(onPhones)) return countsPart(item, phones, hands);
  const few = `${counted(onPhones, 'answer')} on ${onPhones === 1 ? 'a phone' : 'phones'}: too few to count here without telling whose they are.`;
  if (sum(hands) === 0) return { rows: [], total: few };
  const none = phones.map(() => 0);
  return { rows: countsPart(item, none, hands).rows, total: `${counted(sum(hands), 'hand')}. ${few}` };
}

function totalWords(phones: number, hands: number): string {
  if (phones + hands === 0) return 'Nobody answered.';
  if (hands === 0) return `${counted(phones, 'answer')}, all on phones.`;
  return phones === 0 ? `${counted(hands, 'hand')}, nobody on a phone.` : `${phones} on phones and ${counted(hands, 'hand')}.`;
}

/** "9 of 12 have answered." Who was taken out of the class meanwhile still counts. */
export function answeredWords(answered: number, members: number): string {
  const of = Math.max(answered, members);
  return answered === 1 ? `1 of ${of} has answered.` : `${answered} of ${of} have answered.`;
}

export const stateWords: Readonly<Record<QuestionState, string>> = {
  waiting: 'not opened',
  open: 'open',
  closed: 'closed',
  shown: 'shown',
};
