import type { PoolClient } from 'pg';
import type { Person } from '../accounts/index.js';
import { lockMemories, recordPaperAnswers } from '../answers/index.js';
import { classFor } from '../classes/index.js';
import { dayNumber } from '../core/calendar.js';
import { RungwiseError } from '../core/errors.js';
import { takeStep, type Refusal, type Step } from '../core/evenings/steps.js';
import { memoryModel } from '../core/memory.js';
import { lettersOf } from '../core/papers/sheet.js';
import { isRight, learnt, putAll, type SheetItem } from '../papers/index.js';
import type { Clock } from '../platform/clock.js';
import { inTransaction, type Db } from '../platform/db.js';
import type { QuestionsService } from '../questions/index.js';
import { answersToMark, markAnswers } from './answer-store.js';
import * as evenings from './evening-store.js';
import type { LiveEvenings } from './live.js';
import type { EveningHead, EveningItemRow } from './rows.js';
import * as store from './step-store.js';

/** A tutor's side of an evening: what is before the class, the steps through it, and the counts. */

export type HeldItem = SheetItem & EveningItemRow;

export interface HeldView {
  head: EveningHead;
  items: HeldItem[];
  /** Choices on phones to the question before the class. */
  answered: number;
  /** By question, then by option; null where the counts are not to be known yet. */
  phones: (number[] | null)[];
}

/** An evening in which no step was taken for so long is over. */
const forgottenMilliseconds = 12 * 3_600_000;

export function holdingService(needs: { db: Db; clock: Clock; questions: QuestionsService; live: LiveEvenings }) {
  const { db, clock, questions, live } = needs;
  const model = memoryModel();

  /** @throws RungwiseError `not-found` for an evening of a class that this tutor does not have */
  async function headOf(person: Person, classId: number, eveningId: string): Promise<EveningHead> {
    await classFor(db, person, classId, 'hold-evenings');
    const head = await evenings.findEvening(db, classId, eveningId);
    if (head === null) throw new RungwiseError('not-found');
    return head;
  }

  const put = async (eveningId: string, region: EveningHead['region'], only: number | null = null): Promise<HeldItem[]> => {
    const rows = (await evenings.itemsOf(db, eveningId)).filter(({ position }) => only === null || position === only);
    const items = await putAll(questions, rows, region);
    return items.map((item, index) => ({ ...item, ...(rows[index] as EveningItemRow) }));
  };

  async function view(person: Person, classId: number, eveningId: string): Promise<HeldView> {
    const head = await headOf(person, classId, eveningId);
    const items = await put(eveningId, head.region);
    const [answered, counts] = [await evenings.answeredCount(db, eveningId, head.place), await evenings.choiceCounts(db, eveningId)];
    const phones = items.map(({ position, state, task }) => {
      if (state !== 'shown' && head.endedAt === null) return null;
      return lettersOf(task).map((letter) => counts.find((row) => row.position === position && row.choice === letter)?.count ?? 0);
    });
    return { head, items, answered, phones };
  }

  /** @param seen the question that the page showed @returns why it was not done; null when it was, now or before */
  async function step(person: Person, classId: number, eveningId: string, wanted: Step, seen: number): Promise<Refusal | null> {
    const head = await headOf(person, classId, eveningId);
    return await take(eveningId, head.region, wanted, seen);
  }

  async function take(eveningId: string, region: EveningHead['region'], wanted: Step, seen: number): Promise<Refusal | null> {
    // Before the transaction: what holds a connection must not wait for another one. Closing is only ever of the question that was seen.
    const items = wanted === 'close' ? await put(eveningId, region, seen) : wanted === 'end' ? await put(eveningId, region) : [];
    const why = await inTransaction(db, (sql) => takeWith(sql, eveningId, items, wanted, seen));
    live.nudge();
    return why;
  }

  async function takeWith(
    sql: PoolClient,
    eveningId: string,
    items: readonly HeldItem[],
    wanted: Step,
    seen: number,
  ): Promise<Refusal | null> {
    const before = await store.lockEvening(sql, eveningId);
    if (before === null) throw new RungwiseError('not-found');
    const result = takeStep(before, wanted, seen);
    if (result.did !== 'stepped') return result.did === 'refused' ? result.why : null;
    const { state, closed } = result;
    const now = clock.now();
    const changed = state.states.findIndex((each, index) => each !== before.states[index]);
    const item = changed < 0 ? null : { position: changed + 1, state: state.states[changed] ?? 'waiting' };
    await store.writeStep(sql, eveningId, { place: state.place, endedAt: state.ended ? now : null, now, item });
    if (closed !== null) await record(sql, eveningId, before.region, items.find(({ position }) => position === closed) as HeldItem, now);
    return null;
  }

  /** Marks what was chosen on phones, adds it to the record of answers and moves the memories. Whoever was marked before is left as is. */
  async function record(sql: PoolClient, eveningId: string, region: EveningHead['region'], item: SheetItem, at: Date): Promise<void> {
    const given = await answersToMark(sql, eveningId, item.position);
    if (given.length === 0) return;
    const people = given.map(({ personId }) => personId);
    const memories = new Map((await lockMemories(sql, people, [item.questionId])).map((row) => [row.personId, row]));
    const marked = given.map(({ personId, choice, savedAt, timeZone, examDay }) => {
      const answer = { letter: choice, day: dayNumber(at.getTime(), timeZone), examDay, answeredAt: savedAt };
      return { personId, right: isRight(item, choice), learnt: learnt(model, item, answer, memories.get(personId)) };
    });
    await recordPaperAnswers(
      sql,
      region,
      marked.flatMap((each) => each.learnt ?? []),
    );
    await markAnswers(
      sql,
      eveningId,
      item.position,
      marked.map(({ personId, right, learnt: line }) => ({ personId, right, token: line?.token ?? null })),
    );
  }

  /** @returns false when another question is before the class than the page showed, or the evening is over */
  async function setHands(person: Person, classId: number, eveningId: string, position: number, hands: number[]): Promise<boolean> {
    await headOf(person, classId, eveningId);
    const written = await store.writeHands(db, eveningId, position, hands, clock.now());
    live.nudge();
    return written;
  }

  /** Ends evenings that were left running, with what was chosen. Called by a timer; twice does no harm. @returns how many */
  async function endForgotten(): Promise<number> {
    const before = new Date(clock.now().getTime() - forgottenMilliseconds);
    const forgotten = await store.forgottenEvenings(db, before, 50);
    for (const { eveningId, region } of forgotten) await take(eveningId, region, 'end', 0);
    return forgotten.length;
  }

  return { headOf, view, step, setHands, endForgotten };
}
