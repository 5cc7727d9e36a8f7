import { randomUUID } from 'node:crypto';
import type { PoolClient } from 'pg';
import type { Person } from '../accounts/index.js';
import { RungwiseError } from '../core/errors.js';
import { lettersOf } from '../core/papers/sheet.js';
import type { OutlookService } from '../outlook/index.js';
import type { Clock } from '../platform/clock.js';
import { inTransaction, type Db } from '../platform/db.js';
import { doubtOf } from './entry-doubt.js';
import * as store from './entry-store.js';
import { markSheet, type HandingIn } from './hand-in.js';
import type { PaperHead } from './rows.js';
import type { SettingService, SetView } from './set-service.js';
import type { SheetItem } from './sheet-item.js';
import { sheetOf } from './sitting-store.js';

/** Results of a class paper that was sat on paper: typed in, marked, learnt from once. */

export interface EntryNeeds {
  db: Db;
  clock: Clock;
  outlook: OutlookService;
  handingIn: HandingIn;
  setting: SettingService;
}

/** The letters of each question, version by version. */
export type PaperLetters = string[][][];

export interface EntryView extends SetView {
  letters: PaperLetters;
}

export interface Letters {
  version: number;
  /** Null for a blank. */
  choices: readonly (string | null)[];
}

export type SheetWish = Letters & ({ memberId: number } | { guestName: string });

/** `already`: this candidate has a result, which stays; `same` when it has the very same letters. `on-screen`: it is being sat just now. */
export type Entered =
  | { state: 'entered'; sittingId: string }
  | { state: 'already'; sittingId: string; version: number; right: number; same: boolean }
  | { state: 'on-screen' };

export type EntryService = ReturnType<typeof entryService>;

export function entryService(needs: EntryNeeds) {
  const { db, setting } = needs;
  const lettersFor = keptLetters(setting);

  async function view(person: Person, paperId: string): Promise<EntryView> {
    const set = await setting.view(person, paperId);
    return { ...set, letters: await lettersFor(person, set.head) };
  }

  const doubt = (person: Person, paperId: string, letters: Letters): Promise<string | null> => doubtOf(setting, person, paperId, letters);

  /** All of them, or, when anything fails, none. Whoever has a result already keeps it. */
  async function enterMany(person: Person, paperId: string, wishes: readonly SheetWish[]): Promise<Entered[]> {
    const head = await setting.headOf(person, paperId);
    const letters = await lettersFor(person, head);
    for (const wish of wishes) mustFit(wish, letters);
    const asked = await setting.versions(person, paperId, [...new Set(wishes.map(({ version }) => version))]);
    return await enterSheets(needs, head, wishes, new Map(asked.versions.map(({ version, items }) => [version, items])));
  }

  async function enter(person: Person, paperId: string, wish: SheetWish): Promise<Entered> {
    const [entered] = await enterMany(person, paperId, [wish]);
    return entered ?? { state: 'on-screen' };
  }

  /** What was typed for a sheet, to be looked at again; of what was sat on a screen there is none. */
  async function sheet(person: Person, paperId: string, sittingId: string): Promise<Letters> {
    const { roll, letters } = await view(person, paperId);
    const found = roll.find(({ sitting }) => sitting?.sittingId === sittingId)?.sitting;
    if (found?.way !== 'sheet') throw new RungwiseError('not-found');
    return { version: found.version, choices: await choicesOf(db.pool, sittingId, letters[found.version - 1]?.length ?? 0) };
  }

  async function correct(person: Person, paperId: string, sittingId: string, typed: Letters): Promise<void> {
    const head = await setting.headOf(person, paperId);
    mustFit(typed, await lettersFor(person, head));
    await correctSheet(needs, person, head, sittingId, typed);
  }

  async function results(person: Person, paperId: string): Promise<{ head: PaperHead; questions: number; rows: store.ResultRow[] }> {
    const { head, letters } = await view(person, paperId);
    return { head, questions: letters[0]?.length ?? 0, rows: await store.resultsOf(db, paperId) };
  }

  return { view, doubt, sheet, enter, enterMany, correct, results };
}

/** Letters of papers never change, so they are kept; whoever asks has been let in to the paper before. */
function keptLetters(setting: SettingService) {
  const kept = new Map<string, PaperLetters>();
  return async function lettersFor(person: Person, { paperId, versions: count }: PaperHead): Promise<PaperLetters> {
    const known = kept.get(paperId);
    if (known !== undefined) return known;
    const all = Array.from({ length: count }, (_, index) => index + 1);
    const { versions } = await setting.versions(person, paperId, all);
    const made = versions.map(({ items }) => items.map(({ task }) => lettersOf(task)));
    if (kept.size >= 200) kept.clear();
    kept.set(paperId, made);
    return made;
  };
}

/** What was typed has been read against the paper before; anything else comes from no page of ours. */
function mustFit({ version, choices }: Letters, letters: PaperLetters): void {
  const own = letters[version - 1];
  const fits = own?.length === choices.length && choices.every((choice, index) => choice === null || own[index]?.includes(choice) === true);
  if (!fits) throw new RungwiseError('form-not-understood', 'letters that the paper does not have');
}

const choicesOf = async (sql: Pick<PoolClient, 'query'>, sittingId: string, questions: number): Promise<(string | null)[]> => {
  const choices = new Map((await sheetOf(sql, sittingId)).map(({ position, choice }) => [position, choice]));
  return Array.from({ length: questions }, (_, index) => choices.get(index + 1) ?? null);
};

async function enterSheets(
  { db, clock, outlook, handingIn }: EntryNeeds,
  head: PaperHead,
  wishes: readonly SheetWish[],
  asked: ReadonlyMap<number, SheetItem[]>,
): Promise<Entered[]> {
  const members = new Map((await store.classMembers(db, head.classId ?? 0)).map((row) => [row.memberId, row]));
  const savedAt = clock.now();
  const sheets: (store.NewSheet & { place: number })[] = [];
  for (const [place, wish] of wishes.entries()) {
    const member = 'memberId' in wish ? members.get(wish.memberId) : null;
    if (member === undefined) throw new RungwiseError('form-not-understood', 'nobody of this class');
    sheets.push({
      place,
      sittingId: randomUUID(),
      paperId: head.paperId,
      memberId: member?.memberId ?? null,
      guestName: 'guestName' in wish ? wish.guestName : null,
      version: wish.version,
      choices: wish.choices,
      extraTime: member?.extraTime ?? 0,
      // As things stood before the sheet is learnt from, and outside the transaction, since it takes a while.
      chance: member === null ? null : await outlook.chanceOf({ ...member, id: member.memberId }, head),
      savedAt,
    });
  }
  // Always in one order, so that two tutors who send at once do not wait for one another.
  sheets.sort((a, b) => (a.memberId ?? 0) - (b.memberId ?? 0));
  const entered: Entered[] = [];
  await inTransaction(db, async (sql) => {
    for (const sheet of sheets) entered[sheet.place] = await enterSheet(sql, handingIn, sheet, asked.get(sheet.version) ?? []);
  });
  return entered;
}

async function enterSheet(sql: PoolClient, handingIn: HandingIn, sheet: store.NewSheet, items: readonly SheetItem[]): Promise<Entered> {
  if (await store.addSheet(sql, sheet)) {
    await handingIn.handInWith(sql, sheet.sittingId, items, sheet.savedAt);
    return { state: 'entered', sittingId: sheet.sittingId };
  }
  const there = await store.findSheet(sql, sheet);
  if (there === null || there.right === null) return { state: 'on-screen' };
  const { sittingId, version, right } = there;
  const choices = await choicesOf(sql, sittingId, sheet.choices.length);
  const same = version === sheet.version && choices.every((choice, index) => choice === sheet.choices[index]);
  return { state: 'already', sittingId, version, right, same };
}

/** Marks anew, by the keys as printed; what was corrected since follows as the paper is looked at. What the candidate's memory learnt first it keeps: the record of answers is only ever added to. */
async function correctSheet(
  { db, clock, setting }: EntryNeeds,
  person: Person,
  head: PaperHead,
  sittingId: string,
  { version, choices }: Letters,
): Promise<void> {
  const items = (await setting.versions(person, head.paperId, [version])).versions[0]?.items ?? [];
  const sheet = choices.map((choice, index) => ({ position: index + 1, choice }));
  const marked = markSheet(items, sheet);
  await inTransaction(db, async (sql) => {
    if (!(await store.lockSheet(sql, head.paperId, sittingId))) throw new RungwiseError('not-found');
    const tokens = await store.tokensOf(sql, sittingId);
    const right = marked.filter((answer) => answer.right).length;
    const answers = marked.map((answer, index) => ({
      ...answer,
      right: answer.choice === null ? null : answer.right,
      token: tokens.get(items[index]?.questionId ?? 0) ?? null,
    }));
    await store.replaceSheet(sql, sittingId, { version, right, passed: right >= head.blueprint.passMark, answers, savedAt: clock.now() });
  });
}
