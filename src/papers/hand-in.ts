import type { PoolClient } from 'pg';
import { lockMemories, recordPaperAnswers, type PaperAnswer } from '../answers/index.js';
import { dayNumber } from '../core/calendar.js';
import { RungwiseError } from '../core/errors.js';
import { memoryModel } from '../core/memory.js';
import type { QuestionsService } from '../questions/index.js';
import { inTransaction, type Db } from '../platform/db.js';
import { isRight, learnt } from './learning.js';
import { itemsOf } from './paper-store.js';
import { putAll, type SheetItem } from './sheet-item.js';
import { askedIn, finishSitting, lockSitting, type LockedSitting, type MarkedAnswer } from './hand-in-store.js';
import { overdueSittings, sheetOf } from './sitting-store.js';
import type { SheetRow } from './rows.js';

/** Handing in: marked once, and learnt from once, all in one transaction. Whoever comes second finds it done. */

/** What a sheet is worth, without a look at anything else. */
export function markSheet(items: readonly SheetItem[], sheet: readonly Pick<SheetRow, 'position' | 'choice'>[]): MarkedAnswer[] {
  const choices = new Map(sheet.map(({ position, choice }) => [position, choice]));
  return items.map(({ position, task }) => {
    const choice = choices.get(position) ?? null;
    return { position, choice, right: choice !== null && isRight({ task }, choice), token: null };
  });
}

export function handingIn({ db, questions }: { db: Db; questions: QuestionsService }) {
  const model = memoryModel();

  /** @param at the moment that counts: now, or the deadline when that has passed */
  async function handIn(sittingId: string, at: Date): Promise<void> {
    const asked = await askedIn(db, sittingId);
    if (asked === null) throw new RungwiseError('not-found');
    // Before the transaction: what holds a connection must not wait for another one, or a class that hands in at once stops the server.
    const items = await putAll(questions, await itemsOf(db.pool, asked.paperId, asked.version), asked.region);
    await inTransaction(db, (sql) => handInWith(sql, sittingId, items, at));
  }

  /** Sittings whose time has run out are handed in with what was saved. Called by pages and by a timer; twice does no harm. */
  async function closeOverdue(now: Date): Promise<number> {
    const overdue = await overdueSittings(db, now, 200);
    for (const { sittingId, deadlineAt } of overdue) await handIn(sittingId, deadlineAt);
    return overdue.length;
  }

  /** @param items what the sitting's version asks */
  async function handInWith(sql: PoolClient, sittingId: string, items: readonly SheetItem[], at: Date): Promise<void> {
    const sitting = await lockSitting(sql, sittingId);
    if (sitting === null) throw new RungwiseError('not-found');
    if (sitting.handedInAt !== null) return;
    const sheet = await sheetOf(sql, sittingId);
    const marked = markSheet(items, sheet);
    const savedAt = new Map(sheet.map((row) => [row.position, row.savedAt]));
    const learnt = sitting.personId === null ? [] : await learn(sql, sitting, sitting.personId, items, marked, savedAt, at);
    const tokens = new Map(learnt.map(({ position, token }) => [position, token]));
    const right = marked.filter((answer) => answer.right).length;
    await finishSitting(sql, sittingId, {
      handedInAt: at,
      right,
      passed: right >= sitting.passMark,
      answers: marked.filter(({ choice }) => choice !== null).map((answer) => ({ ...answer, token: tokens.get(answer.position) ?? null })),
    });
  }

  /** A blank teaches nothing: it may be that there was no time. */
  async function learn(
    sql: PoolClient,
    sitting: LockedSitting,
    personId: number,
    items: readonly SheetItem[],
    marked: readonly MarkedAnswer[],
    savedAt: ReadonlyMap<number, Date>,
    at: Date,
  ): Promise<(PaperAnswer & { position: number })[]> {
    const held = await lockMemories(
      sql,
      [personId],
      items.map(({ questionId }) => questionId),
    );
    const memories = new Map(held.map((row) => [row.questionId, row]));
    const { examDay, timeZone } = sitting;
    const day = dayNumber(at.getTime(), timeZone ?? 'Europe/London');
    const answers = items.flatMap((item, index) => {
      const letter = marked[index]?.choice ?? null;
      const answeredAt = savedAt.get(item.position) ?? at;
      const answer = letter === null ? null : learnt(model, item, { letter, day, examDay, answeredAt }, memories.get(item.questionId));
      return answer === null ? [] : [{ position: item.position, ...answer }];
    });
    await recordPaperAnswers(sql, sitting.region, answers);
    return answers;
  }

  return { handIn, handInWith, closeOverdue };
}

export type HandingIn = ReturnType<typeof handingIn>;
