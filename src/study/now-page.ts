import { dayWords, isoDay } from '../core/calendar.js';
import type { TitleField } from '../core/page-parts.js';
import type { ForecastDay } from '../core/plan/forecast.js';
import { regionWords, type Region } from '../core/syllabus.js';
import { nextStudyDay, phaseOf } from '../core/plan/settings.js';
import { counted } from '../core/words.js';
import type { NowPage } from './page-types.js';
import { field } from './pages.js';
import type { StudyService } from './service.js';
import type { PlannedRow } from './planning.js';

/** The page Now: what to do now, what comes back when, and nothing else. */

type Overview = Awaited<ReturnType<StudyService['overview']>>;

/**
 * @param queries the person's own that wait, and answers to them that were not looked at yet
 * @param waiting what is said of a paper that waits, and of a class evening that runs
 */
export function nowPage(
  view: Overview,
  person: { displayName: string; region: Region },
  csrf: string,
  newRound: string,
  queries: { own: number; unseen: number },
  { paper, evening }: { paper: NowPage['data']['paper']; evening: { text: string; href: string } | null },
): NowPage {
  const { due, unseen } = dueCount(view.pool, view.day);
  const ten = view.planned.length;
  return {
    view: 'home/now',
    data: {
      today: dayWords(view.day),
      packTitle: [...new Set(view.pool.map((row) => row.pack))].join(', '),
      ...(examWords(view) ?? { headline: headline(ten, due), lead: lead(due, unseen, view) }),
      plan: view.saved ? 'Your plan' : 'Set your exam and your days',
      answers: queriesLine(queries),
      paper,
      // A paper's clock runs, so it comes first.
      evening: evening === null ? null : { ...evening, first: paper?.running !== true },
      busy: paper?.running === true || evening !== null,
      carryOn: carryOn(view),
      lengths: view.lengths.flatMap(lengthOf),
      action: '/study/rounds',
      csrf,
      round: newRound,
      first: view.planned.slice(0, 3).map(({ questionId, reason }) =>
        firstRow(
          view.pool.find((row) => row.questionId === questionId),
          reason,
          view.day,
        ),
      ),
      coming: view.ahead.length > 0 ? view.ahead.map(aheadRow) : coming(view),
      titleBlock: titleBlock(view, unseen, person),
    },
  };
}

function carryOn({ open }: Overview): NowPage['data']['carryOn'] {
  if (open === null) return null;
  return { href: `/study/rounds/${open.id}`, label: `Carry on with your round: ${counted(open.left, 'question')} left` };
}

function queriesLine({ own, unseen }: { own: number; unseen: number }): string | null {
  if (unseen > 0) return unseen === 1 ? 'A tutor has answered your query.' : `Tutors have answered ${unseen} of your queries.`;
  if (own > 0) return own === 1 ? 'Your query waits for a tutor.' : `${own} of your queries wait for a tutor.`;
  return null;
}

function titleBlock(view: Overview, unseen: number, person: { displayName: string; region: Region }): TitleField[] {
  return [
    field('Candidate', person.displayName, 6, { name: true }),
    field('Region', regionWords[person.region], 6),
    field('Met so far', `${view.pool.length - unseen} of ${view.pool.length} questions`, 6),
    field('As of', dayWords(view.day), 6),
  ];
}

function headline(ready: number, due: number): string {
  if (ready === 0) return 'You have answered everything for today';
  if (due === 0) return `${inWords(ready)} ${ready === 1 ? 'question is' : 'questions are'} ready`;
  return due === 1 ? 'One question has come back' : `${inWords(due)} questions have come back`;
}

/** With an exam ahead, the day has a measure, and what is said goes by that. */
function examWords({ plan, day, planned, left }: Overview): { headline: string; lead: string } | null {
  const phase = phaseOf(plan, day);
  if (phase === 'no-exam' || planned.length === 0) return null;
  if (phase === 'exam-day') return { headline: 'Today is the exam', lead: 'A few questions, if it calms you. Nothing new today.' };
  if (phase === 'keeping-safe')
    return {
      headline: `${inWords(planned.length)} to keep you safe`,
      lead: 'The exam is behind you. What keeps people safe is still asked now and then.',
    };
  const days = (plan.examDay ?? day) - day;
  const when = days === 1 ? 'The exam is tomorrow.' : `${days} days to the exam.`;
  if (left === 0)
    return { headline: 'Done for today', lead: `${when} You have done what you planned for today, and may go on if you like.` };
  const fresh = planned.filter(({ reason }) => reason === 'new').length;
  return {
    headline: `${inWords(planned.length)} ${planned.length === 1 ? 'question' : 'questions'} for today`,
    lead: `${when} ${fresh === 0 ? 'You have met them all before.' : fresh === planned.length ? 'All of them are new.' : `${inWords(fresh)} of them ${fresh === 1 ? 'is' : 'are'} new.`}`,
  };
}

const aheadRow = ({ day, off, fresh, again, minutes }: ForecastDay): NowPage['data']['coming'][number] => {
  const count = fresh + again;
  const text = off ? 'Day off' : count === 0 ? 'Nothing planned' : `${counted(count, 'question')}, about ${minutes} min`;
  return { iso: isoDay(day), day: dayWords(day, 'short'), text };
};

const words =
  'No One Two Three Four Five Six Seven Eight Nine Ten Eleven Twelve Thirteen Fourteen Fifteen Sixteen Seventeen Eighteen Nineteen Twenty'.split(
    ' ',
  );
const inWords = (n: number): string => words[n] ?? String(n);

function lead(due: number, unseen: number, view: Overview): string {
  if (view.planned.length === 0) return 'Come back tomorrow: what you might forget will be waiting.';
  const met = view.pool.length - unseen;
  if (met === 0)
    return 'Most questions take under a minute, and you can stop whenever you like: nothing is lost. You are told at once what is right, and why.';
  if (due === 0)
    return unseen === 0
      ? 'Nothing is due yet. You can go over the ones you are least sure of.'
      : 'Nothing you have met is due yet, so these are mostly new.';
  return 'You have met these before and might soon forget them. New ones are mixed in.';
}

function lengthOf(length: Overview['lengths'][number]): NowPage['data']['lengths'] {
  if (length.planned.length === 0) return [];
  const count = length.planned.length;
  if (length.minutes === 0) return [{ minutes: '0', label: 'Just one question', questions: '' }];
  return [
    {
      minutes: String(length.minutes),
      label: `${length.minutes} minutes`,
      questions: counted(count, 'question'),
    },
  ];
}

function firstRow(row: PlannedRow | undefined, reason: string, today: number): NowPage['data']['first'][number] {
  const why =
    row?.surelyWrong === true
      ? 'You were sure, and it was not so'
      : reason === 'new'
        ? 'New'
        : reason === 'gain'
          ? 'Brings most on the exam day'
          : reason === 'fading'
            ? dueWords(row, today)
            : 'Before it is due';
  return { code: row?.objective ?? '', title: row?.objectiveTitle ?? '', why };
}

function dueWords(row: PlannedRow | undefined, today: number): string {
  const gap = today - (row?.memory?.lastDay ?? today);
  return gap === 1 ? 'Last met yesterday' : `Last met ${gap} days ago`;
}

/** How many are due, and how many were never met. */
function dueCount(pool: readonly PlannedRow[], today: number): { due: number; unseen: number } {
  const due = pool.filter((row) => row.dueDay !== null && row.dueDay <= today && row.memory?.lastDay !== today).length;
  return { due, unseen: pool.filter(({ memory }) => memory === null).length };
}

/** The next dates on which something comes back, at most five. */
function coming({ pool, day: today, plan }: Overview): NowPage['data']['coming'] {
  const counts = new Map<number, number>();
  for (const { dueDay } of pool) {
    if (dueDay === null || dueDay <= today) continue;
    const asked = nextStudyDay(plan, dueDay);
    counts.set(asked, (counts.get(asked) ?? 0) + 1);
  }
  return [...counts.entries()]
    .sort(([a], [b]) => a - b)
    .slice(0, 5)
    .map(([day, count]) => ({
      iso: isoDay(day),
      day: dayWords(day, 'short'),
      text: `${count} ${count === 1 ? 'question comes' : 'questions come'} back`,
    }));
}
