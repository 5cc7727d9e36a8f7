import { dayWords, shortDate, whenWords } from '../core/calendar.js';
import type { CautionPart, TitleField } from '../core/page-parts.js';
import { unitSpoken } from '../core/families/draw.js';
import type { BankQuestion } from '../questions/index.js';
import type { QuestionPage, RoundEndPage } from './page-types.js';
import type { AskedItem, StudyService } from './service.js';

/** From what the service says to what a page shows. */

const letters = 'ABCDEFGHIJ';

export const letterOf = (index: number): string => letters[index] ?? '?';

export function cautionPart(caution: AskedItem['put']['caution']): CautionPart | null {
  return caution === null ? null : { sign: caution.sign, text: caution.text };
}

/** A field of a title block, plain unless said otherwise. */
export const field = (label: string, value: string, width: TitleField['width'], more: Partial<TitleField> = {}): TitleField => ({
  label,
  value,
  width,
  name: false,
  id: false,
  href: null,
  ...more,
});

/** The title block says where the statement comes from. */
export function questionTitleBlock(bank: BankQuestion, seed: number): TitleField[] {
  const drawn = bank.item.kind === 'numeric';
  return [
    field('Objective', `${bank.objective.code} ${bank.objective.title}`, 8, { name: true }),
    field('Kind', drawn ? 'Fresh numbers each time' : 'Single best answer', 4),
    field(drawn ? 'Family' : 'Question', drawn ? familyTitle(bank) : bank.code, drawn ? 6 : 3, { id: !drawn }),
    field('Revision', String(bank.revision), drawn ? 2 : 3, { id: true }),
    ...(drawn ? [field('Draw', String(seed), 4, { id: true })] : []),
    ...(drawn ? [] : [field('Checked on', shortDate(bank.checked), 6)]),
    field('Source', bank.sources, 12),
    field('Pack and licence', `${bank.pack.title} ${bank.pack.version}, ${bank.pack.licence}`, drawn ? 8 : 12),
    ...(drawn ? [field('Checked on', shortDate(bank.checked), 4)] : []),
  ];
}

const familyTitle = (bank: BankQuestion): string => (bank.item.kind === 'numeric' ? bank.item.family.title : bank.code);

export interface Refused {
  why: string;
  given: string;
}

export function questionPage(item: AskedItem, csrf: string, refused: Refused | null): QuestionPage {
  const { put, bank } = item;
  const drawn = put.draw;
  return {
    view: 'study/question',
    data: {
      topicTitle: bank.topic.title,
      position: item.place,
      total: item.total,
      action: '/study/answer',
      token: item.token,
      csrf,
      stem: put.stem,
      retryLead: item.retryOf === null ? null : 'Once more, with fresh numbers. Take your time.',
      options:
        put.options?.map((option, index) => ({
          letter: letterOf(index),
          value: option.value,
          text: option.text,
          chosen: option.value === refused?.given,
        })) ?? null,
      entry:
        put.options === null && drawn !== null
          ? {
              label: 'Your answer',
              unit: drawn.key.unit,
              unitSpoken: unitSpoken(drawn.key.unit),
              readsUnit: drawn.key.unit,
              hint: `Type a number, with or without its unit.${drawn.hint === null ? '' : ` Give ${drawn.hint}.`}`,
              value: refused?.given ?? '',
              why: refused?.why ?? null,
            }
          : null,
      optionsWhy: put.options === null ? null : (refused?.why ?? null),
      caution: cautionPart(put.strip),
      titleBlock: questionTitleBlock(bank, item.seed),
    },
  };
}

type RoundEnd = Awaited<ReturnType<StudyService['roundEnd']>>;

export function roundEndPage(end: RoundEnd, csrf: string, newRound: string, personName: string): RoundEndPage {
  const last = end.rows.filter(({ answer }) => answer.freshToken === null || !answer.freshAnswered);
  return {
    view: 'study/round-end',
    data: {
      asked: last.length,
      right: last.filter(({ answer }) => answer.right).length,
      rows: last.map(({ answer, bank }) => ({
        objective: bank?.objective.code ?? '',
        title: bank?.objective.title ?? 'A question that is no longer in the bank',
        how: howWords(answer.right, answer.certainty === 'guessing'),
        back: answer.dueDayAfter === null ? 'soon' : whenWords(answer.dueDayAfter, end.today),
        href: `/study/answers/${answer.token}`,
      })),
      actions: { newRound, csrf, more: end.more },
      titleBlock: [field('Candidate', personName, 6, { name: true }), field('Day', dayWords(end.today), 6)],
    },
  };
}

function howWords(right: boolean, guessing: boolean): string {
  if (!right) return 'Not right';
  return guessing ? 'Right, by a guess' : 'Right';
}
