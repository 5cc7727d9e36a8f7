import { createHash } from 'node:crypto';
import type { AccountsService, Person } from '../accounts/index.js';
import { RungwiseError } from '../core/errors.js';
import { sameName } from '../core/names.js';
import type { Region } from '../core/syllabus.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import { classFor, tutorOf } from './access.js';
import { listClasses, type ClassHead } from './head-store.js';
import { keepLonger } from './keep-store.js';
import * as store from './member-store.js';
import type { SlipWords } from './slip-cookie.js';

/** The candidates of a class: what its tutor does about them. Another's class answers as one that does not exist. */

export interface MemberNeeds {
  db: Db;
  clock: Clock;
  accounts: Pick<AccountsService, 'addFor' | 'slipFor'>;
}

export interface MemberView {
  head: ClassHead;
  member: store.MemberRow;
  /** Other classes of this tutor that run. */
  others: ClassHead[];
  now: Date;
}

export interface SlipsView {
  head: ClassHead;
  slips: { name: string; words: string[] }[];
  now: Date;
}

export type MemberService = ReturnType<typeof memberService>;

const permission = 'keep-classes';

export function memberService({ db, clock, accounts }: MemberNeeds) {
  /**
   * Candidates without a device: an account and a return phrase for each name, which is told this once.
   * @returns `sent` when this very form was sent before; why, when it cannot be
   */
  async function add(
    person: Person,
    classId: number,
    wish: { names: readonly string[]; region: Region; token: string },
  ): Promise<SlipWords[] | 'sent' | { why: string }> {
    const head = await classFor(db, person, classId, permission);
    const entries = wish.names.map((name) => ({
      name,
      region: wish.region,
      timeZone: head.timeZone,
      startToken: tokenOf(wish.token, name),
    }));
    if (
      await store.wasSent(
        db,
        entries.map(({ startToken }) => startToken),
      )
    )
      return 'sent';
    const there = await store.membersOf(db, classId);
    const twice = wish.names.find((name) => there.some((member) => sameName(member.name, name)));
    if (twice !== undefined)
      return { why: `There is a ${twice} in this class already. Tell them apart, such as by the first letter of the surname.` };
    return (await accounts.addFor(person, entries, (sql, ids) => store.addMembers(sql, classId, ids, clock.now()))) ?? 'sent';
  }

  /** @throws RungwiseError `not-found` for somebody who is not in the class */
  async function member(person: Person, classId: number, personId: number): Promise<MemberView> {
    const head = await classFor(db, person, classId, permission);
    const found = await store.findMember(db, classId, personId);
    if (found === null) throw new RungwiseError('not-found');
    const others = (await listClasses(db, tutorOf(person))).filter((other) => other.classId !== classId && !other.ended);
    return { head, member: found, others, now: clock.now() };
  }

  /** A new phrase in place of a lost one. @returns null when another slip was made since the page was opened */
  async function slip(person: Person, classId: number, personId: number, before: Date | null): Promise<SlipWords | null> {
    await member(person, classId, personId);
    const words = await accounts.slipFor(person, personId, before, (sql) => store.holdMember(sql, classId, personId));
    return words === null ? null : { personId, words };
  }

  /** Out of this class and into another of the same tutor's. */
  async function move(person: Person, classId: number, personId: number, to: number): Promise<void> {
    await classFor(db, person, classId, permission);
    await classFor(db, person, to, permission);
    if (to !== classId) await store.moveMember(db, classId, to, personId, clock.now());
  }

  async function remove(person: Person, classId: number, personId: number): Promise<void> {
    await classFor(db, person, classId, permission);
    await store.removeMember(db, classId, personId);
  }

  /** A member who was away for long is kept for a year more. */
  async function keep(person: Person, classId: number, personId: number): Promise<void> {
    await classFor(db, person, classId, permission);
    await keepLonger(db, personId, clock.now(), classId);
  }

  /** The slips that a tutor's browser keeps, with their names; whoever is no longer in the class is left out. */
  async function slips(person: Person, classId: number, kept: readonly SlipWords[]): Promise<SlipsView> {
    const head = await classFor(db, person, classId, permission);
    const there = await store.membersOf(db, classId);
    const named = kept.flatMap(({ personId, words }) => {
      const found = there.find((each) => each.personId === personId);
      return found === undefined ? [] : [{ name: found.name, words }];
    });
    return { head, slips: named, now: clock.now() };
  }

  return { add, member, slip, move, remove, keep, slips };
}

/** One line of a form is one person, however often the form is sent. */
function tokenOf(form: string, name: string): string {
  const hex = createHash('sha256').update(`${form}\n${name}`).digest('hex');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20, 32)].join('-');
}
