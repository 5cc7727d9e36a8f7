import { markSheet } from './hand-in.js';
import { lockSitting } from './hand-in-store.js';
import { asksOlder, correctSitting, handedInOf } from './correcting-store.js';
import { itemsOf } from './paper-store.js';
import { putAll, putOnSheet, type SheetItem } from './sheet-item.js';
import { sheetOf } from './sitting-store.js';
import type { SheetTask } from '../core/papers/sheet.js';
import { inTransaction, type Db } from '../platform/db.js';
import type { Clock } from '../platform/clock.js';
import type { Region } from '../core/syllabus.js';
import type { BankQuestion, QuestionsService } from '../questions/index.js';
import type { ItemRow } from './rows.js';

/**
 * When a pack corrects the key of a question that a paper asked, the paper is marked again and says so. The words of the paper stay as
 * they were: the corrected key is looked for among the options that were printed. Memories keep what they learnt at hand-in, since the
 * record of answers is only ever added to; the question comes back in rounds with its new key.
 */

export interface CorrectedItem extends SheetItem {
  /** Whether its key is another one than when the paper was made. */
  corrected: boolean;
}

export type Correcting = ReturnType<typeof correcting>;

export function correcting({ db, clock, questions }: { db: Db; clock: Clock; questions: QuestionsService }) {
  async function itemsAsCorrected(rows: readonly ItemRow[], region: Region): Promise<CorrectedItem[]> {
    const items = await putAll(questions, rows, region);
    const current = new Map((await questions.catalogue()).map(({ questionId, revision }) => [questionId, revision]));
    return await Promise.all(
      items.map(async (item): Promise<CorrectedItem> => {
        const revision = current.get(item.questionId);
        const newer = revision === undefined || revision === item.revision ? null : await questions.get(item.questionId, revision);
        return newer === null ? { ...item, corrected: false } : withKeyOf(item, newer, region);
      }),
    );
  }

  /** Marks what was handed in of a paper once more where a key was corrected. @returns how many marks changed */
  async function remarkPaper(paperId: string, region: Region): Promise<number> {
    if (!(await asksOlder(db, paperId))) return 0;
    let changed = 0;
    const asked = new Map<number, CorrectedItem[]>();
    for (const { sittingId, version } of await handedInOf(db, paperId)) {
      const items = asked.get(version) ?? (await itemsAsCorrected(await itemsOf(db.pool, paperId, version), region));
      asked.set(version, items);
      if (items.some((item) => item.corrected) && (await remark(sittingId, items))) changed += 1;
    }
    return changed;
  }

  async function remark(sittingId: string, items: readonly CorrectedItem[]): Promise<boolean> {
    return await inTransaction(db, async (sql) => {
      const sitting = await lockSitting(sql, sittingId);
      if (sitting === null || sitting.handedInAt === null) return false;
      const sheet = await sheetOf(sql, sittingId);
      const before = new Map(sheet.map(({ position, right }) => [position, right]));
      const marked = markSheet(items, sheet);
      const moved = marked.filter(({ position, choice, right }) => choice !== null && before.get(position) !== right);
      if (moved.length === 0) return false;
      const right = marked.filter((answer) => answer.right).length;
      await correctSitting(sql, sittingId, { right, passed: right >= sitting.passMark, at: clock.now(), moved });
      return true;
    });
  }

  return { itemsAsCorrected, remarkPaper };
}

/** The item as it was put, with the key that the newer revision gives to the same words; unchanged where that cannot be told. */
function withKeyOf(item: SheetItem, newer: BankQuestion, region: Region): CorrectedItem {
  const now = asPutNow(item, newer, region);
  const keys =
    now === null
      ? []
      : choices(now.task)
          .filter(({ key }) => key)
          .map(({ name }) => name);
  const own = choices(item.task);
  const place = own.findIndex(({ name }) => keys.includes(name));
  if (place < 0 || own[place]?.key === true) return { ...item, corrected: false };
  return { ...item, bank: newer, task: rekeyed(item.task, place), corrected: true };
}

function asPutNow(item: SheetItem, newer: BankQuestion, region: Region): SheetItem | null {
  const kinds = [item.bank, newer].map(({ item: { kind } }) => kind);
  if (kinds[0] !== kinds[1]) return null;
  try {
    return putOnSheet(newer, item, region);
  } catch {
    // It has become a question that one letter does not answer, or one that is not for this region.
    return null;
  }
}

const choices = (task: SheetTask): { name: string; key: boolean }[] =>
  task.kind === 'choice'
    ? task.options.map(({ text, key }) => ({ name: text, key }))
    : task.places.map(({ part, key }) => ({ name: part.id, key }));

function rekeyed(task: SheetTask, place: number): SheetTask {
  if (task.kind === 'place') return { ...task, places: task.places.map((each, index) => ({ ...each, key: index === place })) };
  return { ...task, options: task.options.map((each, index) => ({ ...each, key: index === place })) };
}
