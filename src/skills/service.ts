import { createHash } from 'node:crypto';
import { requirePermission, type Person } from '../accounts/index.js';
import { classFor, findMember, membersOf } from '../classes/index.js';
import { dayNumber, isoDay } from '../core/calendar.js';
import { RungwiseError } from '../core/errors.js';
import { readReason, readSignOff, type SignOffReading, type SignOffWish } from '../core/sign-off.js';
import type { Clock } from '../platform/clock.js';
import { inTransaction, type Db } from '../platform/db.js';
import type { QuestionsService, SkillRow } from '../questions/index.js';
import { holdsIn, keyOf, ofPaper } from './listed.js';
import * as store from './store.js';

/** A skill of a pack, and a mark that changes with what it asks. */
export interface ListedSkill extends SkillRow {
  key: string;
  mark: string;
}

/** What came of wanting to sign. `changed`: the pack asks something else than the page that was filled in. */
export type Signed =
  | { state: 'signed' }
  | { state: 'already'; by: string; seenOn: string }
  | { state: 'changed' }
  | { state: 'refused'; reading: Extract<SignOffReading, { ok: false }> };

export type SkillsService = ReturnType<typeof skillsService>;

/** Practical skills that candidates show and tutors sign. Another's class answers as one that does not exist. */
export function skillsService({ db, clock, questions }: { db: Db; clock: Clock; questions: Pick<QuestionsService, 'skills'> }) {
  const listed = async (): Promise<ListedSkill[]> =>
    (await questions.skills()).map((row) => ({ ...row, key: keyOf(row), mark: markOf(row) }));

  /** The class by skills. */
  async function grid(person: Person, classId: number) {
    const head = await classFor(db, person, classId, 'sign-off');
    const [members, standing, all] = [await membersOf(db, classId), await store.standingOf(db, classId), await listed()];
    // Where nobody is in the class yet, what holds where its tutor lives is what will be asked.
    const regions = members.length === 0 ? [person.region] : [...new Set(members.map(({ region }) => region))];
    const skills = ofPaper(all, head.paper).filter((row) => regions.some((region) => holdsIn(row, region)));
    const named = members.map(({ personId, name, region }) => ({ personId, name, region }));
    return { head, members: named, standing, skills, regions, now: clock.now() };
  }

  /** One candidate's skills, with every signature, also the withdrawn and those of skills that are gone. */
  async function sheet(person: Person, classId: number, memberId: number) {
    const head = await classFor(db, person, classId, 'sign-off');
    const found = await findMember(db, classId, memberId);
    if (found === null) throw new RungwiseError('not-found');
    const member = { personId: found.personId, name: found.name, region: found.region };
    const skills = ofPaper(await listed(), head.paper).filter((row) => holdsIn(row, member.region));
    const signOffs = ofPaper(
      (await store.signOffsOf(db, memberId)).map((row) => ({ ...row, pack: row.skill.split('/')[0] as string })),
      head.paper,
    );
    return { head, member, skills, signOffs, now: clock.now() };
  }

  /** Signs once: sent again it changes nothing, and what somebody else has signed meanwhile stands. */
  async function signOff(
    person: Person,
    classId: number,
    memberId: number,
    wish: SignOffWish & { id: string; skill: string; mark: string },
  ): Promise<Signed> {
    const { skills, now } = await sheet(person, classId, memberId);
    const asked = skills.find(({ key }) => key === wish.skill);
    if (asked === undefined || asked.mark !== wish.mark) return { state: 'changed' };
    const { packTitle, skill } = asked;
    const reading = readSignOff(wish, skill.criteria.length, dayNumber(now.getTime(), person.timeZone));
    if (!reading.ok) return { state: 'refused', reading };
    return await inTransaction(db, async (sql): Promise<Signed> => {
      if (!(await store.holdMember(sql, classId, memberId))) throw new RungwiseError('not-found');
      const there = await store.findSigned(sql, wish.id, memberId, wish.skill);
      if (there?.id === wish.id && (there.personId !== memberId || there.skill !== wish.skill))
        throw new RungwiseError('form-not-understood');
      if (there !== null)
        return there.id === wish.id ? { state: 'signed' } : { state: 'already', by: there.signerName, seenOn: there.seenOn };
      await store.addSignOff(sql, {
        id: wish.id,
        personId: memberId,
        skill: wish.skill,
        body: { packTitle, title: skill.title, criteria: skill.criteria.map(({ text }) => text) },
        remarks: reading.remarks,
        seenOn: isoDay(reading.seenDay),
        signedBy: person.id,
        signerName: person.displayName,
        signedAt: now,
      });
      return { state: 'signed' };
    });
  }

  /** Takes a signature back; it stays in the record, struck out. @returns why not, or null */
  async function withdraw(person: Person, classId: number, memberId: number, wish: { id: string; reason: string }): Promise<string | null> {
    const { signOffs } = await sheet(person, classId, memberId);
    if (!signOffs.some(({ id }) => id === wish.id)) throw new RungwiseError('not-found');
    const reading = readReason(wish.reason);
    if (!reading.ok) return reading.why;
    await store.withdrawSignOff(db, wish.id, person.displayName, reading.reason, clock.now());
    return null;
  }

  /** A candidate's own: what is signed, in whatever class it was, and what is still to show. */
  async function own(person: Person) {
    requirePermission(person, 'study');
    const signOffs = await store.signOffsOf(db, person.id);
    return { signOffs, skills: (await listed()).filter((row) => holdsIn(row, person.region)), now: clock.now() };
  }

  return { grid, sheet, signOff, withdraw, own };
}

function markOf({ skill }: SkillRow): string {
  const asked = JSON.stringify([skill.title, skill.criteria.map(({ text }) => text)]);
  return createHash('sha256').update(asked).digest('hex').slice(0, 16);
}
