import { randomInt } from 'node:crypto';
import { requirePermission, type Person } from '../accounts/index.js';
import { dayNumber } from '../core/calendar.js';
import { makeCode } from '../core/join-code.js';
import type { Clock } from '../platform/clock.js';
import { inTransaction, type Db } from '../platform/db.js';
import type { PaperRow, QuestionsService } from '../questions/index.js';
import { nameOf } from '../study/index.js';
import { classFor } from './access.js';
import type { ClassHead } from './head-store.js';
import { leavingOf, type LeavingMember } from './keep-store.js';
import { membersOf, type MemberRow } from './member-store.js';
import * as store from './people-store.js';

/** A class itself, its tutors and the code by which it is joined. Another's class answers as one that does not exist. */

export interface PeopleNeeds {
  db: Db;
  clock: Clock;
  questions: Pick<QuestionsService, 'papers'>;
}

/** A class as its form gives it. */
export type ClassWish = Omit<store.ClassFields, 'timeZone'>;
export type ClassFaults = { exam?: string; paper?: string };

export interface PeopleView {
  head: ClassHead;
  /** Also one whose time is over. */
  code: { code: string; until: Date } | null;
  tutors: store.StaffRow[];
  otherStaff: store.StaffRow[];
  members: MemberRow[];
  /** Of them, who will be removed for want of visits. */
  leaving: LeavingMember[];
  papers: PaperRow[];
  now: Date;
}

export type PeopleService = ReturnType<typeof peopleService>;

const permission = 'keep-classes';
const mostDaysAhead = 731;

export function peopleService({ db, clock, questions }: PeopleNeeds) {
  /** What a new class can be made of. */
  async function forNew(person: Person): Promise<{ papers: PaperRow[]; now: Date }> {
    requirePermission(person, permission);
    return { papers: await questions.papers(), now: clock.now() };
  }

  /** What is wrong with a class's exam or paper. What stands already may stay, though its day has passed or its pack has gone. */
  async function faultsOf(person: Person, wish: ClassWish, stands: ClassHead | null): Promise<ClassFaults> {
    const faults: ClassFaults = {};
    if (wish.examOn !== null && wish.examOn !== stands?.examOn) {
      const ahead = Date.parse(wish.examOn) / 86_400_000 - dayNumber(clock.now().getTime(), person.timeZone);
      if (ahead < 0) faults.exam = 'That day has passed. Choose today or a later day, or leave it empty.';
      if (ahead > mostDaysAhead) faults.exam = 'That is more than two years ahead. Look at the year, or leave it empty.';
    }
    if (wish.paper !== null && wish.paper !== stands?.paper && !(await questions.papers()).some((each) => nameOf(each) === wish.paper))
      faults.paper = 'That paper is no longer in the bank. Choose another.';
    return faults;
  }

  /** Makes a class whose tutor is its maker. @returns its id, the same for a form that is sent twice, or what is wrong by field */
  async function make(person: Person, wish: ClassWish, startToken: string): Promise<{ classId: number } | { faults: ClassFaults }> {
    requirePermission(person, permission);
    const faults = await faultsOf(person, wish, null);
    if (Object.keys(faults).length > 0) return { faults };
    const classId = await store.addClass(db, { ...wish, timeZone: person.timeZone }, person.id, startToken, clock.now());
    // Somebody else's form: nothing was made.
    return classId === null ? { faults: { paper: 'Reload the page and send the form again.' } } : { classId };
  }

  async function view(person: Person, classId: number): Promise<PeopleView> {
    const head = await classFor(db, person, classId, permission);
    const [code, tutors, otherStaff] = [
      await store.codeOf(db, classId),
      await store.tutorsOf(db, classId),
      await store.otherStaff(db, classId),
    ];
    return {
      head,
      code,
      tutors,
      otherStaff,
      members: await membersOf(db, classId),
      leaving: await leavingOf(db, classId),
      papers: await questions.papers(),
      now: clock.now(),
    };
  }

  /** @returns what is wrong by field; nothing when it was saved */
  async function save(person: Person, classId: number, wish: ClassWish): Promise<ClassFaults> {
    const head = await classFor(db, person, classId, permission);
    const faults = await faultsOf(person, wish, head);
    if (Object.keys(faults).length > 0) return faults;
    // A time is meant on the clock of whoever typed it.
    const sameTime = wish.meetsOn === head.meetsOn && wish.meetsAt === head.meetsAt;
    await store.saveClass(db, classId, { ...wish, timeZone: sameTime ? head.timeZone : person.timeZone });
    return {};
  }

  async function end(person: Person, classId: number): Promise<void> {
    await classFor(db, person, classId, permission);
    await store.endClass(db, classId, clock.now());
  }

  async function takeUp(person: Person, classId: number): Promise<void> {
    await classFor(db, person, classId, permission);
    await store.takeUpClass(db, classId);
  }

  async function addTutor(person: Person, classId: number, tutorId: number): Promise<void> {
    await classFor(db, person, classId, permission);
    await store.addTutor(db, classId, tutorId);
  }

  /** @returns `last` for the last tutor, who stays */
  async function removeTutor(person: Person, classId: number, tutorId: number): Promise<'removed' | 'last'> {
    await classFor(db, person, classId, permission);
    return (await inTransaction(db, (sql) => store.removeTutor(sql, classId, tutorId))) ? 'removed' : 'last';
  }

  /** A new code, good for so many days; the old one is dead. */
  async function newCode(person: Person, classId: number, days: number): Promise<void> {
    await classFor(db, person, classId, permission);
    const until = afterDays(days);
    // Two classes with one code are less likely than 1 in 8 thousand million; a second try is enough.
    const set = () =>
      store.setCode(
        db,
        classId,
        makeCode((below) => randomInt(below)),
        until,
      );
    await set().catch((error: unknown) => ((error as { code?: unknown }).code === '23505' ? set() : Promise.reject(error as Error)));
  }

  async function keepCode(person: Person, classId: number, days: number): Promise<void> {
    await classFor(db, person, classId, permission);
    await store.keepCode(db, classId, afterDays(days));
  }

  async function closeCode(person: Person, classId: number): Promise<void> {
    await classFor(db, person, classId, permission);
    await store.closeCode(db, classId);
  }

  const afterDays = (days: number): Date => new Date(clock.now().getTime() + days * 86_400_000);

  return { forNew, make, view, save, end, takeUp, addTutor, removeTutor, newCode, keepCode, closeCode };
}
