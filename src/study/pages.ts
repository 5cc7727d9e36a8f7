import { dayWords, isoDay, shortDate, whenWords } from '../core/calendar.js';
import type { CautionPart, TitleField } from '../core/page-parts.js';
import { unitSpoken } from '../core/families/draw.js';
import { dueCount, type RoundCandidate } from '../core/round.js';
import type { BankQuestion } from '../questions/index.js';
import type { NowPage, QuestionPage, RoundEndPage } from './page-types.js';
import type { AskedItem, StudyService } from './service.js';
import type { PoolRow } from './store.js';

/** From what the service says to what a page shows. */

const letters = 'ABCDEFGHIJ';

export const letterOf = (index: number): string => letters[index] ?? '?';

export function cautionPart(item: AskedItem): CautionPart | null {
  const { caution } = item.put;
  return caution === null ? null : { sign: caution.sign, text: caution.text };
}

const field = (label: string, value: string, width: TitleField['width'], more: Partial<TitleField> = {}): TitleField => ({
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
        put.options?.map((option, index) => ({ letter: letterOf(index), value: option.value, text: option.text, chosen: option.value === refused?.given })) ?? null,
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
      caution: cautionPart(item),
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

type Overview = Awaited<ReturnType<StudyService['overview']>>;

export function nowPage(view: Overview, person: { displayName: string; region: string }, csrf: string, newRound: string): NowPage {
  const { due, unseen } = dueCount(view.pool, view.day);
  const ten = view.planned.length;
  return {
    view: 'home/now',
    data: {
      today: dayWords(view.day),
      packTitle: 'Entry safety',
      headline: headline(ten, due),
      lead: lead(due, unseen, view),
      carryOn:
        view.open === null
          ? null
          : { href: `/study/rounds/${view.open.id}`, label: `Carry on with your round: ${view.open.left} ${view.open.left === 1 ? 'question' : 'questions'} left` },
      lengths: [2, 1, 3, 0].flatMap((index) => lengthOf(view.lengths[index])),
      action: '/study/rounds',
      csrf,
      round: newRound,
      first: view.planned.slice(0, 3).map(({ questionId, reason }) => firstRow(view.pool.find((row) => row.questionId === questionId), reason, view.day)),
      coming: coming(view.pool, view.day),
      titleBlock: [
        field('Candidate', person.displayName, 6, { name: true }),
        field('Region', { uk: 'United Kingdom, 230 V', eu: 'Europe, 230 V', na: 'North America, 120 V' }[person.region] ?? person.region, 6),
        field('Met so far', `${view.pool.length - unseen} of ${view.pool.length} questions`, 6),
        field('As of', dayWords(view.day), 6),
      ],
    },
  };
}

function headline(ready: number, due: number): string {
  if (ready === 0) return 'You have answered everything for today';
  if (due === 0) return `${inWords(ready)} ${ready === 1 ? 'question is' : 'questions are'} ready`;
  return due === 1 ? 'One question has come back' : `${inWords(due)} questions have come back`;
}

const words = 'No One Two Three Four Five Six Seven Eight Nine Ten Eleven Twelve Thirteen Fourteen Fifteen Sixteen Seventeen Eighteen Nineteen Twenty'.split(' ');
const inWords = (n: number): string => words[n] ?? String(n);

function lead(due: number, unseen: number, view: Overview): string {
  if (view.planned.length === 0) return 'Come back tomorrow: what you might forget will be waiting.';
  const met = view.pool.length - unseen;
  if (met === 0) return 'Each question takes about a minute. You are told at once what is right, and why.';
  if (due === 0) return unseen === 0 ? 'Nothing is due yet. You can go over the ones you are least sure of.' : 'Nothing you have met is due yet, so these are mostly new.';
  return 'You have met these before and might soon forget them. New ones are mixed in.';
}

function lengthOf(length: Overview['lengths'][number] | undefined): NowPage['data']['lengths'] {
  if (length === undefined || length.planned.length === 0) return [];
  const count = length.planned.length;
  if (length.minutes === 0) return [{ minutes: '0', label: 'Just one question', questions: '' }];
  return [{ minutes: String(length.minutes), label: `${length.minutes} minutes`, questions: `${count} ${count === 1 ? 'question' : 'questions'}` }];
}

function firstRow(row: (RoundCandidate & PoolRow) | undefined, reason: string, today: number): NowPage['data']['first'][number] {
  const why = row?.surelyWrong === true ? 'You were sure, and it was not so' : reason === 'new' ? 'New' : reason === 'due' ? dueWords(row, today) : 'Before it is due';
  return { code: row?.objective ?? '', title: row?.objectiveTitle ?? '', why };
}

function dueWords(row: RoundCandidate | undefined, today: number): string {
  const gap = today - (row?.memory?.lastDay ?? today);
  return gap === 1 ? 'Last met yesterday' : `Last met ${gap} days ago`;
}

/** The next dates on which something comes back, at most five. */
function coming(pool: readonly RoundCandidate[], today: number): NowPage['data']['coming'] {
  const counts = new Map<number, number>();
  for (const { dueDay } of pool) if (dueDay !== null && dueDay > today) counts.set(dueDay, (counts.get(dueDay) ?? 0) + 1);
  return [...counts.entries()]
    .sort(([a], [b]) => a - b)
    .slice(0, 5)
    .map(([day, count]) => ({ iso: isoDay(day), day: dayWords(day, 'short'), text: `${count} ${count === 1 ? 'question comes' : 'questions come'} back` }));
}
