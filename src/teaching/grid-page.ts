import { dayNumber, dayWords } from '../core/calendar.js';
import { weekdayName } from '../core/classes/meeting.js';
import { counted, shortened } from '../core/words.js';
import { field } from '../study/index.js';
import type { Person } from '../accounts/index.js';
import type { GridPage } from './page-types.js';
import type { GridRow, GridView } from './grid-service.js';
import { isAway, meanOf, recallOf, rightOf, rowPart, type ChanceOf } from './grid-parts.js';
import type { MistakeRow } from './grid-store.js';
import { asideWords, itemWords } from './plan-words.js';
import type { PlanView } from './plan-service.js';
import { candidates, classTabs, daysSince, examDayOf, examField, examWords, paperNote, seenWords } from '../classes/index.js';

/** The class grid: candidates by topics, beside what to teach next. */

export interface GridWish {
  on: 'today' | 'exam';
  /** `need`, `name`, `seen`, or a topic's code. */
  order: string;
  /** `all`: being right on any question of a topic; `asked`: recalling those that were asked. */
  of: 'all' | 'asked';
}

/** More than these is no evening's work. */
const shownMistakes = 12;

interface GridNeeds {
  view: GridView;
  plan: PlanView;
  mistakes: readonly MistakeRow[];
}

export function gridPage({ view, plan, mistakes }: GridNeeds, wish: GridWish, person: Person): GridPage {
  const { head, topics } = view;
  const root = `/classes/${head.classId}`;
  const chanceOf = wish.of === 'all' ? rightOf : recallOf;
  const rows = ordered(view.rows, wish.order, chanceOf);
  const away = view.rows.filter(isAway).map((row) => ({ row, days: daysSince(row.lastSeenAt, row.today, row.timeZone) }));
  const itemOf = (code: string): number | null => {
    const place = plan.items.findIndex(({ objective }) => objective.topic === code);
    return place < 0 ? null : place + 1;
  };
  return {
    view: 'teaching/grid',
    data: {
      tabs: classTabs(head.classId, ''),
      name: head.name,
      meeting: plan.meeting === null ? examWords(head) : `Next meeting: ${dayWords(plan.meeting)}, ${head.meetsAt ?? ''}`,
      lead: leadOf(view, wish),
      note: paperNote(head, view.paper === null ? null : { chosen: view.paper.chosen, title: view.paper.paper.blueprint.title }),
      ...choices(view, wish),
      topics: topics.map(({ code, title }) => {
        return { code, title, item: itemOf(code), href: at(root, { ...wish, order: code }), sorted: wish.order === code };
      }),
      rows: rows.map((row) => rowPart(row, view, root, chanceOf)),
      means: topics.map(({ code }) => meanOf(view.rows, code, chanceOf)),
      plan: plan.items.map((item, index) => ({ number: index + 1, title: item.objective.title, text: itemWords(item) })),
      planHeading: teachHeading(plan.meeting),
      planHref: `${root}/plan`,
      badHref: `${root}/questions`,
      aside: asideWords(view)[0] ?? null,
      away: away.map(({ row, days }) => ({ name: row.name, seen: seenWords(days) })),
      mistakes: mistakes.slice(0, shownMistakes).map(mistakePart),
      titleBlock: titleBlockOf(view, person),
    },
  };
}

const mistakePart = ({ questionId, code, stem, names }: MistakeRow): GridPage['data']['mistakes'][number] => ({
  href: `/bank/questions/${questionId}`,
  code,
  stem: shortened(stem),
  names: names.join(', '),
});

function choices(view: GridView, wish: GridWish): Pick<GridPage['data'], 'days' | 'orders' | 'figures'> {
  const root = `/classes/${view.head.classId}`;
  return {
    days: dayLinks(view, wish),
    figures: (['all', 'asked'] as const).map((of) => ({ href: at(root, { ...wish, of }), text: figureWords[of], current: wish.of === of })),
    orders: ['need', 'name', 'seen'].map((order) => {
      return { href: at(root, { ...wish, order }), text: orderWords[order] ?? '', current: wish.order === order };
    }),
  };
}

/** "What to teach on Thursday". */
export const teachHeading = (meeting: number | null): string =>
  meeting === null ? 'What to teach next' : `What to teach on ${weekdayName(meeting)}`;

const orderWords: Readonly<Record<string, string>> = { need: 'most in need first', name: 'by name', seen: 'longest away first' };

const figureWords = { all: 'any question of the topic', asked: 'only those asked so far' } as const;

function at(root: string, { on, order, of }: GridWish): string {
  const query = new URLSearchParams({
    ...(on === 'exam' ? { on } : {}),
    ...(order === 'need' ? {} : { order }),
    ...(of === 'asked' ? { of } : {}),
  }).toString();
  return query === '' ? root : `${root}?${query}`;
}

function dayLinks({ head, now }: GridView, wish: GridWish): GridPage['data']['days'] {
  const day = examDayOf(head);
  if (day === null || day <= dayNumber(now.getTime(), head.timeZone)) return [];
  const root = `/classes/${head.classId}`;
  return [
    { href: at(root, { ...wish, on: 'today' }), text: 'today', current: wish.on === 'today' },
    {
      href: at(root, { ...wish, on: 'exam' }),
      text: `on ${dayWords(day, 'short')}, if nobody studied till then`,
      current: wish.on === 'exam',
    },
  ];
}

function leadOf({ rows, paper, examDay }: GridView, { of }: GridWish): string {
  if (rows.length === 0) return 'Nobody is in this class yet. Give out the joining code, or add candidates by name, on the page People.';
  const when = examDay === null ? 'if it were sat now' : `on ${dayWords(examDay)}, if nobody studied till then`;
  const title = paper === null ? 'a paper' : `“${paper.paper.blueprint.title}”`;
  const figure =
    of === 'all'
      ? 'the candidate would be right on a question of the topic, asked before or not'
      : 'the candidate would recall what was asked of the topic so far';
  return `Each figure is the chance, per cent, that ${figure}; below it, how many of its questions were ever asked. Outlook: the chance of passing ${title} ${when}.`;
}

function ordered(rows: readonly GridRow[], order: string, chanceOf: ChanceOf): GridRow[] {
  const sorted = [...rows];
  if (order === 'name') return sorted.sort((a, b) => a.name.localeCompare(b.name, 'en'));
  if (order === 'seen') return sorted.sort((a, b) => (a.lastSeenAt?.getTime() ?? 0) - (b.lastSeenAt?.getTime() ?? 0));
  if (order === 'need') return sorted;
  // By one topic: the weakest first, whoever was asked nothing of it last.
  return sorted.sort((a, b) => (chanceOf(a, order) ?? 2) - (chanceOf(b, order) ?? 2));
}

const titleBlockOf = ({ head, paper, rows, now }: GridView, person: Person): GridPage['data']['titleBlock'] => [
  field('Class', head.name, 4, { name: true }),
  field('Candidates', candidates(rows.length), 4),
  field('Exam', examField(head), 4),
  field('Pack and paper', paper === null ? 'none' : `${paper.paper.packTitle}, ${paper.paper.blueprint.title}`, 4),
  field('Tutors', head.tutors.join(', '), 3),
  field(
    'Answers counted',
    counted(
      rows.reduce((sum, { answers }) => sum + answers, 0),
      'answer',
    ),
    2,
  ),
  field('As of', dayWords(dayNumber(now.getTime(), person.timeZone)), 3),
];
