import { randomInt } from 'node:crypto';
import { requirePermission, type Person } from '../accounts/index.js';
import { RungwiseError } from '../core/errors.js';
import type { Region } from '../core/syllabus.js';
import type { Clock } from '../platform/clock.js';
import { inTransaction, type Db } from '../platform/db.js';
import type { PaperRow, QuestionsService } from '../questions/index.js';
import { nameOf } from '../study/index.js';
import * as store from './class-store.js';
import type { Correcting } from './correcting.js';
import { takeNamesOff } from './guest-names-store.js';
import type { HandingIn } from './hand-in.js';
import { shortWords, type PaperMaker } from './making.js';
import { addPaper, itemsOf } from './paper-store.js';
import type { PaperHead } from './rows.js';
import { putAll, type SheetItem } from './sheet-item.js';

/** A tutor's side of papers: setting one for a class, seeing who has handed in, closing it, going through it. */

export interface SettingNeeds {
  db: Db;
  clock: Clock;
  questions: QuestionsService;
  maker: PaperMaker;
  handingIn: HandingIn;
  correcting: Correcting;
}

export interface SetWish {
  paperId: string;
  classId: number;
  paper: string;
  title: string;
  region: Region;
  versions: number;
  /** Null for a paper that is only printed. */
  opensAt: Date | null;
  closesAt: Date | null;
}

export interface SetView {
  head: PaperHead;
  roll: store.RollRow[];
  now: Date;
}

/** How often each option of each question of the first version was chosen, over all versions. */
export interface ReviewView {
  head: PaperHead;
  items: SheetItem[];
  /** By question: its choices by option, in the order of the first version, and blanks. */
  counts: { options: number[]; blank: number; handedIn: number }[];
}

export type SettingService = ReturnType<typeof settingService>;

export function settingService({ db, clock, questions, maker, handingIn, correcting }: SettingNeeds) {
  /** Null stands for an administrator, who sees every class. */
  const tutorOf = (person: Person): number | null => (person.role === 'administrator' ? null : person.id);

  async function overview(person: Person) {
    requirePermission(person, 'set-papers');
    await closeOverdue();
    return {
      now: clock.now(),
      classes: await store.classesOf(db, tutorOf(person)),
      papers: await questions.papers(),
      set: await store.setPapers(db, tutorOf(person)),
    };
  }

  /** @returns why it cannot be made, by field; nothing when it was */
  async function set(person: Person, wish: SetWish): Promise<{ paper?: string; closes?: string }> {
    requirePermission(person, 'set-papers');
    const own = await store.classesOf(db, tutorOf(person));
    const paper = (await questions.papers()).find((each) => nameOf(each) === wish.paper);
    if (paper === undefined || !own.some(({ classId }) => classId === wish.classId)) throw new RungwiseError('form-not-understood');
    const minutes =
      wish.opensAt === null || wish.closesAt === null ? Infinity : (wish.closesAt.getTime() - wish.opensAt.getTime()) / 60_000;
    if (minutes < paper.blueprint.minutes)
      return { closes: `It would close after ${Math.floor(minutes)} minutes, and the paper takes ${paper.blueprint.minutes}.` };
    const why = await makeFor(person, wish, paper);
    return why === null ? {} : { paper: why };
  }

  async function makeFor(person: Person, wish: SetWish, paper: PaperRow): Promise<string | null> {
    const seed = randomInt(2 ** 31);
    const recent = new Set(await store.recentlySet(db, wish.classId));
    const made = await maker.make({ paper, region: wish.region, seed, versions: wish.versions, recent });
    if ('short' in made) return `This paper cannot be filled there. ${shortWords(made.short)}.`;
    const { paperId, title, region, classId, opensAt, closesAt } = wish;
    const head = { paperId, title, region, classId, opensAt, closesAt, pack: paper.pack, blueprint: paper.blueprint, seed };
    await inTransaction(db, (sql) => addPaper(sql, { ...head, madeBy: person.id, madeAt: clock.now(), versions: made.versions }));
    return null;
  }

  /** @throws RungwiseError `not-found` for a paper of a class that this tutor does not have */
  async function headOf(person: Person, paperId: string): Promise<PaperHead & { classId: number }> {
    requirePermission(person, 'set-papers');
    const head = await store.findSetPaper(db, tutorOf(person), paperId);
    if (head === null || head.classId === null) throw new RungwiseError('not-found');
    return { ...head, classId: head.classId };
  }

  async function view(person: Person, paperId: string): Promise<SetView> {
    const head = await headOf(person, paperId);
    await closeOverdue();
    await correcting.remarkPaper(paperId, head.region);
    return { head, roll: await store.rollOf(db, paperId), now: clock.now() };
  }

  /** Every version that is asked for, in order, as it stands on paper. */
  async function versions(
    person: Person,
    paperId: string,
    wanted: readonly number[],
  ): Promise<{ head: PaperHead; versions: { version: number; items: SheetItem[] }[] }> {
    const head = await headOf(person, paperId);
    const known = wanted.filter((version) => version >= 1 && version <= head.versions);
    const made = await Promise.all(
      known.map(async (version) => ({ version, items: await putAll(questions, await itemsOf(db.pool, paperId, version), head.region) })),
    );
    return { head, versions: made };
  }

  /** Closes the paper now: what was saved is handed in. */
  async function close(person: Person, paperId: string): Promise<void> {
    const head = await headOf(person, paperId);
    const now = clock.now();
    if (head.closesAt !== null && head.closesAt > now) await store.closeWindow(db, paperId, new Date(now.getTime() - 1));
    await closeOverdue();
  }

  async function setExtraTime(person: Person, paperId: string, memberId: number, percent: number): Promise<void> {
    const head = await headOf(person, paperId);
    await store.setExtraTime(db, head.classId, memberId, percent);
  }

  async function removeGuest(person: Person, paperId: string, sittingId: string): Promise<void> {
    await headOf(person, paperId);
    await store.removeGuest(db, paperId, sittingId);
  }

  /** The sheet stays, and nobody can tell whose it was. */
  async function takeNameOff(person: Person, paperId: string, sittingId: string): Promise<void> {
    await headOf(person, paperId);
    if (await store.isOfPaper(db, paperId, sittingId)) await takeNamesOff(db.pool, [sittingId]);
  }

  async function review(person: Person, paperId: string): Promise<ReviewView> {
    const all = await headOf(person, paperId);
    const numbers = Array.from({ length: all.versions }, (_, index) => index + 1);
    const { head, versions: made } = await versions(person, paperId, numbers);
    const counts = await store.choiceCounts(db, paperId);
    const first = await correcting.itemsAsCorrected(await itemsOf(db.pool, paperId, 1), head.region);
    return { head, items: first, counts: first.map((item) => countOptions(item, made, counts)) };
  }

  /** What the figures of the whole paper are worked out from. */
  async function marks(person: Person, paperId: string): Promise<store.PaperMarks> {
    await headOf(person, paperId);
    return await store.marksOf(db, paperId);
  }

  const closeOverdue = (): Promise<number> => handingIn.closeOverdue(clock.now());

  return { overview, set, headOf, view, versions, close, setExtraTime, removeGuest, takeNameOff, review, marks, closeOverdue };
}

type Counted = Awaited<ReturnType<typeof store.choiceCounts>>;

/** The key is one option in every version. Others are matched by their text, or, with other numbers, by the mistake that leads to them. */
function countOptions(
  item: SheetItem,
  made: readonly { version: number; items: SheetItem[] }[],
  counts: Counted,
): ReviewView['counts'][number] {
  const options = optionNames(item).map(() => 0);
  let [blank, handedIn] = [0, 0];
  for (const { version, items } of made) {
    const same = items.find(({ questionId }) => questionId === item.questionId);
    if (same === undefined) continue;
    const names = optionNames(same);
    for (const row of counts.filter((each) => each.version === version && each.position === same.position)) {
      handedIn += row.count;
      const name = row.choice === null ? undefined : names[row.choice.charCodeAt(0) - 65];
      const place = name === undefined ? -1 : optionNames(item).indexOf(name);
      if (row.choice === null) blank += row.count;
      else if (place >= 0) options[place] = (options[place] ?? 0) + row.count;
    }
  }
  return { options, blank, handedIn };
}

/** What an option is, whatever its letter and its numbers. */
function optionNames({ task }: SheetItem): string[] {
  if (task.kind === 'place') return task.places.map(({ value }) => value);
  return task.options.map(({ key, value, tellTale }) => (task.draw === null ? value : key ? 'key' : (tellTale ?? value)));
}
