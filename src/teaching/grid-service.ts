import type { Person } from '../accounts/index.js';
import { dayNumber } from '../core/calendar.js';
import { byNeed } from '../core/classes/level.js';
import { rankObjectives, type Ranked } from '../core/classes/teach.js';
import { RungwiseError } from '../core/errors.js';
import { memoryModel } from '../core/memory.js';
import type { ClassChances, Standing } from '../outlook/index.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import type { PaperRow, QuestionsService } from '../questions/index.js';
import { nameOf } from '../study/index.js';
import { classFor, examDayOf, findMember, membersOf, type ClassHead, type MemberRow } from '../classes/index.js';
import * as store from './grid-store.js';

/** Who needs help: candidates by topics, as things stand today or on the day of the exam. */

export interface GridNeeds {
  db: Db;
  clock: Clock;
  questions: QuestionsService;
  chances: ClassChances;
}

export interface GridRow extends MemberRow {
  /** Today, in this member's own calendar. */
  today: number;
  cells: ReadonlyMap<string, store.CellRow>;
  answers: number;
  met: number;
  of: number;
  surelyWrong: number;
  chance: { low: number; high: number } | null;
  /** By topic: the chance of being right on any of its questions, asked before or not. */
  topics: ReadonlyMap<string, number>;
}

export interface ClassPaper {
  paper: PaperRow;
  /** Whether a tutor has chosen it; else the usual one stands in. */
  chosen: boolean;
}

export interface GridView {
  head: ClassHead;
  now: Date;
  /** Null on a server without any paper. */
  paper: ClassPaper | null;
  /** Day of the exam, when the figures are for it; null for today. */
  examDay: number | null;
  topics: readonly store.TopicRow[];
  /** Most in need first. */
  rows: readonly GridRow[];
  ranked: Ranked;
}

/** The paper that stands in until one is chosen. */
const usualQuestions = 26;

export type GridService = ReturnType<typeof gridService>;

export function gridService({ db, clock, questions, chances }: GridNeeds) {
  const model = memoryModel();

  async function paperOf({ paper }: ClassHead): Promise<ClassPaper | null> {
    const papers = await questions.papers();
    const chosen = papers.find((each) => nameOf(each) === paper);
    if (chosen !== undefined) return { paper: chosen, chosen: true };
    const usual = papers.find(({ blueprint }) => blueprint.questions === usualQuestions) ?? papers[0];
    return usual === undefined ? null : { paper: usual, chosen: false };
  }

  /** How these members stand: today, or on a day to come if nothing more is learnt till then. */
  async function standingsOf(members: readonly MemberRow[], { paper }: ClassPaper, examDay: number | null, now: Date) {
    const present = members.map((member) => ({ ...member, today: dayNumber(now.getTime(), member.timeZone) }));
    const days = present.map(({ personId, today }) => ({ personId, day: examDay ?? today }));
    const byPerson = grouped(await store.cellsOf(db, days, paper.pack, model.curve));
    // On the day itself all that was answered counts as known: an outlook is for the next day on.
    const sitters = present.map(({ personId, region, today }) => ({
      personId,
      region,
      day: examDay ?? today + 1,
      answers: (byPerson.get(personId) ?? []).reduce((sum, { answers }) => sum + answers, 0),
    }));
    const standings = await chances.of(sitters, paper);
    const rows = present.map((member) => gridRow(member, byPerson.get(member.personId) ?? [], standings.get(member.personId) ?? null));
    return { rows, standings: [...standings.values()] };
  }

  /** @param wanted `exam`: figures for the day of the exam, where it is known and not over; else for today */
  async function view(person: Person, classId: number, wanted: 'today' | 'exam'): Promise<GridView> {
    const head = await classFor(db, person, classId, 'see-classes');
    const now = clock.now();
    const [paper, members] = [await paperOf(head), await membersOf(db, classId)];
    const examDay = wanted === 'exam' ? comingExam(head, now) : null;
    const base = { head, now, paper, examDay };
    if (paper === null) {
      const rows = members.map((member) => gridRow({ ...member, today: dayNumber(now.getTime(), member.timeZone) }, [], null));
      return { ...base, topics: [], rows, ranked: rankObjectives([]) };
    }
    const { rows, standings } = await standingsOf(members, paper, examDay, now);
    // Of whoever has answered nothing yet, nothing is known that a class should be taught for.
    const losses = standings.filter(({ met }) => met > 0).map((standing) => standing.losses);
    return { ...base, topics: await store.topicsOf(db, paper.paper.pack), rows: rows.sort(needOrder), ranked: rankObjectives(losses) };
  }

  /**
   * One member of a class as things stand today.
   * @throws RungwiseError `not-found` for anybody who is not in it, and where no pack has a paper, which has no topics to look at
   */
  async function member(
    person: Person,
    classId: number,
    memberId: number,
  ): Promise<{ head: ClassHead; paper: ClassPaper; row: GridRow; now: Date }> {
    const head = await classFor(db, person, classId, 'see-classes');
    const now = clock.now();
    const [found, paper] = [await findMember(db, classId, memberId), await paperOf(head)];
    const [row] = found === null || paper === null ? [] : (await standingsOf([found], paper, null, now)).rows;
    if (row === undefined || paper === null) throw new RungwiseError('not-found');
    return { head, paper, row, now };
  }

  return { view, member };
}

/** Null when no exam is set or it is over. */
function comingExam(head: ClassHead, now: Date): number | null {
  const day = examDayOf(head);
  return day !== null && day > dayNumber(now.getTime(), head.timeZone) ? day : null;
}

function gridRow(member: MemberRow & { today: number }, cells: readonly store.CellRow[], standing: Standing | null): GridRow {
  const sum = (of: (cell: store.CellRow) => number): number => cells.reduce((total, cell) => total + of(cell), 0);
  return {
    ...member,
    cells: new Map(cells.map((cell) => [cell.topic, cell])),
    answers: sum(({ answers }) => answers),
    met: sum(({ met }) => met),
    of: sum(({ of }) => of),
    surelyWrong: sum(({ surelyWrong }) => surelyWrong),
    chance: standing?.chance ?? null,
    topics: standing?.topics ?? new Map(),
  };
}

const needOrder = (a: GridRow, b: GridRow): number => byNeed(needOf(a), needOf(b));
const needOf = ({ name, chance, answers }: GridRow) => ({ name, chance: chance === null ? null : (chance.low + chance.high) / 2, answers });

function grouped(cells: readonly store.CellRow[]): Map<number, store.CellRow[]> {
  const byPerson = new Map<number, store.CellRow[]>();
  for (const cell of cells) {
    const held = byPerson.get(cell.personId);
    if (held === undefined) byPerson.set(cell.personId, [cell]);
    else held.push(cell);
  }
  return byPerson;
}
