import { dayWords, shortDate, whenWords } from '../core/calendar.js';
import { nextStudyDay, type PlanSettings } from '../core/plan/settings.js';
import type { CautionPart, TitleField } from '../core/page-parts.js';
import { kindNames } from '../core/questions/schema.js';
import { askedPart } from '../core/tasks/asked-part.js';
import { emptyEntry } from '../core/tasks/task.js';
import type { BankQuestion } from '../questions/index.js';
import type { QuestionPage, RoundEndPage } from './page-types.js';
import type { Refusal } from './put-question.js';
import type { AskedItem } from './put-question.js';
import type { StudyService } from './service.js';

/** From what the service says to what a page shows. */

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
    field('Kind', kindNames[bank.item.kind === 'numeric' ? 'numeric' : bank.item.question.kind], 4),
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

export function questionPage(item: AskedItem, csrf: string, refusal: Refusal | null): QuestionPage {
  const { put, bank } = item;
  const typed = put.task.kind === 'number';
  return {
    view: 'study/question',
    data: {
      topicTitle: bank.topic.title,
      position: item.place,
      total: item.total,
      action: '/study/answer',
      token: item.token,
      csrf,
      ...askedPart(put.stem, put.task, put.drawing, refusal?.entry ?? emptyEntry, refusal?.why ?? null),
      retryLead: item.retryOf === null ? null : 'Once more, with fresh numbers. Take your time.',
      optionsWhy: typed ? null : (refusal?.why ?? null),
      optionsTarget: refusal?.at ?? 'certainty',
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
      headline: last.length === 0 ? 'Nothing left to ask here today' : 'The round is done',
      lead:
        last.length === 0
          ? 'You have answered these questions today. Tomorrow they can be asked again.'
          : 'What was not right, or only guessed, comes back soon; what you got right comes back later.',
      asked: last.length,
      right: last.filter(({ answer }) => answer.right).length,
      rows: last.map(({ answer, bank }) => ({
        objective: bank?.objective.code ?? '',
        title: bank?.objective.title ?? 'A question that is no longer in the bank',
        how: howWords(answer),
        back: backWords(answer, end.settings, end.today),
        href: `/study/answers/${answer.token}`,
      })),
      actions: { newRound, csrf, more: end.more },
      titleBlock: [field('Candidate', personName, 6, { name: true }), field('Day', dayWords(end.today), 6)],
    },
  };
}

/** When a question comes back: on no day off, though it fell due on one. */
export function backWords({ dueDayAfter }: { dueDayAfter: number | null }, settings: PlanSettings, today: number): string {
  return dueDayAfter === null ? 'soon' : whenWords(nextStudyDay(settings, Math.max(dueDayAfter, today)), today);
}

function howWords({ right, certainty, score }: RoundEnd['rows'][number]['answer']): string {
  if (!right) return isPartly(score) ? 'Partly right' : 'Not right';
  return certainty === 'guessing' ? 'Right, by a guess' : 'Right';
}

/** More of it right than wrong; as much as chance gives is not called right in part. */
export const isPartly = (score: number | null): boolean => score !== null && score > 0.5 && score < 1;
