import { requirePermission, type Person } from '../accounts/index.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import * as store from './held-store.js';

/** What is held about somebody: a summary, the whole in words, the whole as a file. Only ever about whoever asks. */

export interface HeldPart {
  kind: store.HeldKind;
  count: number;
  /** Those of this part. */
  rows: store.HeldRow[];
}

export interface HeldView {
  now: Date;
  months: number;
  kinds: HeldPart[];
}

export interface WholeView extends HeldView {
  /** From 1 on. */
  part: number;
  parts: number;
}

/** Lines of each kind on one page of the whole: a page of them has about a megabyte and is made in a tenth of a second. */
export const linesOfPart = 4000;
/** Read at a time for the file. */
const rowsAtOnce = 1000;
/** Told line by line on the summary; of more it says how many. */
export const fewLines = 5;

export type HeldService = ReturnType<typeof heldService>;

export function heldService({ db, clock }: { db: Db; clock: Clock }) {
  async function view(person: Person): Promise<HeldView> {
    requirePermission(person, 'own-data');
    const counts = await store.countHeld(db, person.id);
    const kinds: HeldPart[] = [];
    for (const kind of store.heldKinds) {
      const count = counts[kind];
      kinds.push({ kind, count, rows: count === 0 || count > fewLines ? [] : await store.readHeld(db, kind, person.id, 0, fewLines) });
    }
    return { now: clock.now(), months: (await store.keepingRules(db)).months, kinds };
  }

  /** A part that there is not is empty. */
  async function whole(person: Person, part: number): Promise<WholeView> {
    requirePermission(person, 'own-data');
    const counts = await store.countHeld(db, person.id);
    const offset = (part - 1) * linesOfPart;
    const kinds: HeldPart[] = [];
    for (const kind of store.heldKinds) {
      const count = counts[kind];
      kinds.push({ kind, count, rows: count <= offset ? [] : await store.readHeld(db, kind, person.id, offset, linesOfPart) });
    }
    const parts = Math.max(1, Math.ceil(Math.max(...Object.values(counts)) / linesOfPart));
    return { now: clock.now(), months: (await store.keepingRules(db)).months, kinds, part, parts };
  }

  /**
   * The whole as JSON, piece by piece: each is read when the one before has gone out, and no connection is held in between, so that
   * a slow reader holds nothing up.
   */
  async function* json(person: Person): AsyncGenerator<string> {
    requirePermission(person, 'own-data');
    const head = {
      format: 'rungwise-personal-data',
      version: 1,
      made_at: clock.now(),
      kept_months_after_last_visit: (await store.keepingRules(db)).months,
    };
    yield `{\n${JSON.stringify(head).slice(1, -1)}`;
    for (const kind of store.heldKinds) {
      yield `,\n${JSON.stringify(kind)}: [`;
      for (let offset = 0; ; offset += rowsAtOnce) {
        const rows = await store.readHeld(db, kind, person.id, offset, rowsAtOnce);
        if (rows.length > 0) yield `${offset === 0 ? '' : ','}\n${rows.map((row) => JSON.stringify(row)).join(',\n')}`;
        if (rows.length < rowsAtOnce) break;
      }
      yield ']';
    }
    yield '\n}\n';
  }

  return { view, whole, json, rules: () => store.keepingRules(db) };
}
