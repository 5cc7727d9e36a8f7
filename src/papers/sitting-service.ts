import { requirePermission, type Person } from '../accounts/index.js';
import { RungwiseError } from '../core/errors.js';
import { lettersOf } from '../core/papers/sheet.js';
import { deadlineOf, stateOf, type SittingState } from '../core/papers/time.js';
import type { Clock } from '../platform/clock.js';
import { inTransaction, type Db } from '../platform/db.js';
import type { OutlookService } from '../outlook/index.js';
import type { QuestionsService } from '../questions/index.js';
import { openPapers } from './class-store.js';
import type { Correcting, CorrectedItem } from './correcting.js';
import type { HandingIn } from './hand-in.js';
import { findPaper, itemsOf } from './paper-store.js';
import type { SheetRow } from './rows.js';
import { putAll, type SheetItem } from './sheet-item.js';
import * as store from './sitting-store.js';

/** A candidate's side of papers: sitting one, handing it in. */

export interface SittingsNeeds {
  db: Db;
  clock: Clock;
  questions: QuestionsService;
  outlook: OutlookService;
  handingIn: HandingIn;
  correcting: Correcting;
}

export interface SittingView {
  sitting: store.SittingWithPaper;
  state: SittingState;
  items: SheetItem[];
  sheet: SheetRow[];
  now: Date;
}

export interface SittingResult {
  sitting: store.SittingWithPaper;
  items: CorrectedItem[];
  sheet: SheetRow[];
}

export type SittingsService = ReturnType<typeof sittingsService>;

export function sittingsService({ db, clock, questions, outlook, handingIn, correcting }: SittingsNeeds) {
  /** A class paper that is open to this candidate. @returns the sitting, the same one when called again */
  async function takeUp(person: Person, paperId: string): Promise<string> {
    requirePermission(person, 'sit-papers');
    const found = await openPapers(db, person.id, clock.now());
    const paper = found.find((each) => each.paperId === paperId);
    if (paper === undefined) throw new RungwiseError('paper-not-open');
    await inTransaction(db, (sql) => store.takeUpSitting(sql, paperId, person.id, paper.extraTime));
    const mine = (await store.listSittings(db, person.id)).find((sitting) => sitting.paperId === paperId);
    if (mine === undefined) throw new RungwiseError('not-found');
    return mine.sittingId;
  }

  async function head(person: Person, sittingId: string): Promise<{ sitting: store.SittingWithPaper; state: SittingState; now: Date }> {
    requirePermission(person, 'sit-papers');
    const now = clock.now();
    const sitting = await store.findSitting(db, person.id, sittingId);
    if (sitting === null) throw new RungwiseError('not-found');
    const state = stateOf(sitting, now.getTime());
    if (state !== 'over') return { sitting, state, now };
    await handingIn.handIn(sittingId, sitting.deadlineAt ?? now);
    return { sitting: (await store.findSitting(db, person.id, sittingId)) ?? sitting, state: 'handed-in', now };
  }

  async function view(person: Person, sittingId: string): Promise<SittingView> {
    const { sitting, state, now } = await head(person, sittingId);
    // Nothing of a question is shown before the clock runs.
    const items =
      state === 'waiting' ? [] : await putAll(questions, await itemsOf(db.pool, sitting.paperId, sitting.version), sitting.region);
    if (state === 'running') keepLetters(person, sittingId, items);
    return { sitting, state, items, sheet: await store.sheetOf(db.pool, sittingId), now };
  }

  async function begin(person: Person, sittingId: string): Promise<void> {
    const { sitting, state, now } = await head(person, sittingId);
    if (state !== 'waiting') return;
    const paper = await findPaper(db, sitting.paperId);
    if (paper === null) throw new RungwiseError('not-found');
    if (paper.closesAt !== null && (now < (paper.opensAt ?? now) || now >= paper.closesAt)) throw new RungwiseError('paper-not-open');
    const deadline = deadlineOf(now.getTime(), paper.blueprint.minutes, sitting.extraTime, paper.closesAt?.getTime() ?? null);
    const chance = await outlook.chanceOf(person, paper);
    await store.beginSitting(db, sittingId, { startedAt: now, deadlineAt: new Date(deadline), chance });
  }

  /** Letters of each question of a sitting. They never change, so they are kept; only a sitting's own candidate comes this far. */
  const letters = new Map<string, string[][]>();
  function keepLetters(person: Person, sittingId: string, items: readonly SheetItem[]): void {
    if (letters.size >= 2000) letters.clear();
    letters.set(
      `${person.id}/${sittingId}`,
      items.map(({ task }) => lettersOf(task)),
    );
  }
  async function lettersFor(person: Person, sittingId: string): Promise<string[][]> {
    const key = `${person.id}/${sittingId}`;
    const known = letters.get(key);
    if (known !== undefined) return known;
    const { items } = await view(person, sittingId);
    return items.map(({ task }) => lettersOf(task));
  }

  /** @returns `late` when the sitting no longer runs: what was saved before counts, and this does not */
  async function save(person: Person, sittingId: string, choices: readonly store.SavedChoice[]): Promise<'saved' | 'late'> {
    requirePermission(person, 'sit-papers');
    const offered = await lettersFor(person, sittingId);
    if (
      choices.some(
        ({ position, choice }) => offered[position - 1] === undefined || (choice !== null && !offered[position - 1]?.includes(choice)),
      )
    )
      throw new RungwiseError('form-not-understood', `sitting ${sittingId}: a letter or a question that the paper does not have`);
    if (choices.length === 0) return (await head(person, sittingId)).state === 'running' ? 'saved' : 'late';
    return (await store.saveChoices(db, person.id, sittingId, choices, clock.now())) ? 'saved' : 'late';
  }

  async function handIn(person: Person, sittingId: string): Promise<void> {
    const { state, now } = await head(person, sittingId);
    if (state === 'running') await handingIn.handIn(sittingId, now);
  }

  /** What was handed in, marked by the keys as they stand now; null while the paper is not handed in. */
  async function result(person: Person, sittingId: string): Promise<SittingResult | null> {
    const first = await head(person, sittingId);
    if (first.state !== 'handed-in') return null;
    const { paperId, version, region } = first.sitting;
    const changed = await correcting.remarkPaper(paperId, region);
    const { sitting } = changed > 0 ? await head(person, sittingId) : first;
    const items = await correcting.itemsAsCorrected(await itemsOf(db.pool, paperId, version), region);
    return { sitting, items, sheet: await store.sheetOf(db.pool, sittingId) };
  }

  return { takeUp, view, head, begin, save, handIn, result };
}
