import { randomInt, randomUUID } from 'node:crypto';
import { answersOfRound, findAnswer, recordAnswer, type RecordedAnswer } from '../answers/index.js';
import { requirePermission, type Person } from '../accounts/index.js';
import { dayNumber } from '../core/calendar.js';
import { RungwiseError } from '../core/errors.js';
import { memoryModel } from '../core/memory.js';
import { offersFreshDraw, ratingOf, surelyWrongAfter, type RatedAnswer } from '../core/rating.js';
import { forecast } from '../core/plan/forecast.js';
import type { PlanSettings } from '../core/plan/settings.js';
import { dueDayOf } from '../core/plan/value.js';
import type { QuestionsService } from '../questions/index.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import type { AnswerForm, RoundForm } from './forms.js';
import { putQuestion, readGiven, type AskedItem, type Given } from './put-question.js';
import { memoryOf } from './memory-row.js';
import { minutesLeft, readPlanning, settingsOf, sittingOf, startOf, wished } from './planning.js';
import * as store from './store.js';
import { stageOf, writtenAnswer } from './written-answer.js';

/** Rounds of practice: what is asked, how an answer moves the memory, what is said of it. */

export interface StudyNeeds {
  db: Db;
  clock: Clock;
  questions: QuestionsService;
}

/** An answer as it was recorded, and what is told of it. */
export interface OutcomeView {
  answer: RecordedAnswer;
  item: AskedItem;
  today: number;
  settings: PlanSettings;
}

export type Answered =
  | { state: 'recorded'; token: string }
  /** Nothing was stored: the form lacks something, and says what, with what was typed kept. */
  | { state: 'ask-again'; item: AskedItem };

/** Minutes; a longer day is offered in pieces. */
const longestRound = 20;

/** How often an answer is tried again when the same memory moved at the same moment. */
const tries = 3;

export type StudyService = ReturnType<typeof studyService>;

export function studyService({ db, clock, questions }: StudyNeeds) {
  const model = memoryModel();
  const today = (person: Person): number => dayNumber(clock.now().getTime(), person.timeZone);

  /** Starts a round under the id that the page made; sending it twice makes one round. */
  async function startRound(person: Person, wish: RoundForm): Promise<void> {
    requirePermission(person, 'study');
    const planning = await readPlanning({ db, clock, questions }, person);
    const { day, pool } = planning;
    const revisions = new Map(pool.map((row) => [row.questionId, row.revision]));
    const items = wished(planning, person, wish).map(({ questionId }, index) => ({
      token: randomUUID(),
      // Even places: a fresh draw after a wrong number goes between.
      position: 2 * (index + 1),
      questionId,
      revision: revisions.get(questionId) as number,
      seed: randomInt(2 ** 31),
    }));
    const minutes = 'minutes' in wish ? wish.minutes : 0;
    await store.addRound(db, { id: wish.round, personId: person.id, minutes, day, region: person.region, now: clock.now(), items });
  }

  async function withBank(item: store.ItemRow): Promise<AskedItem> {
    const bank = await questions.get(item.questionId, item.revision);
    if (bank === null) throw new RungwiseError('not-found', `question ${item.questionId} revision ${item.revision}`);
    return { ...item, bank, put: putQuestion(bank, item.seed, item.region) };
  }

  /** The question to show, or null at the end of the round. */
  async function question(person: Person, roundId: string): Promise<AskedItem | null> {
    requirePermission(person, 'study');
    const item = await store.nextItem(db, person.id, roundId);
    if (item !== null) return await withBank(item);
    if (!(await store.roundExists(db, person.id, roundId))) throw new RungwiseError('not-found');
    return null;
  }

  async function answer(person: Person, form: AnswerForm): Promise<Answered> {
    requirePermission(person, 'study');
    for (let tried = 0; tried < tries; tried += 1) {
      const item = await store.itemWithMemory(db, person.id, form.token);
      if (item === null) throw new RungwiseError('not-found');
      if (item.answered) return { state: 'recorded', token: form.token };
      const asked = await withBank(item);
      const given = readGiven(asked.put, form);
      if ('why' in given) return { state: 'ask-again', item: asked };
      const outcome = await record(person, item, asked, given);
      if (outcome !== 'moved-meanwhile') return { state: 'recorded', token: form.token };
    }
    throw new RungwiseError('changed-meanwhile');
  }

  function record(person: Person, item: store.ItemWithMemory, asked: AskedItem, given: Given) {
    const day = today(person);
    const before = memoryOf(item);
    const rated: RatedAnswer = {
      way: asked.put.task.kind === 'number' ? 'number' : 'options',
      right: given.mark.right,
      certainty: given.certainty,
      expectedRecall: before === null ? null : model.recall(before, day),
      stage: stageOf(item, asked, day),
      gaveUp: given.gaveUp,
    };
    const rating = ratingOf(rated);
    const moved = rating === null ? before : model.after(before, day, rating);
    const fresh = offersFreshDraw(rated);
    const written = writtenAnswer(person, asked, given, rated, rating, day, clock.now());
    const after = {
      stability: moved?.stability ?? null,
      difficulty: moved?.difficulty ?? null,
      lastDay: moved?.lastDay ?? null,
      dueDay: rating === null || moved === null ? item.dueDay : dueDayOf(moved, asked.bank.objective.weight, item.examDay, model),
      retryDay: fresh ? day : null,
      surelyWrong: surelyWrongAfter(item.surelyWrong, rated),
    };
    return recordAnswer(db, written, item, after, fresh ? { token: randomUUID(), seed: randomInt(2 ** 31) } : null);
  }

  async function outcome(person: Person, token: string): Promise<OutcomeView | null> {
    requirePermission(person, 'study');
    const recorded = await findAnswer(db, person.id, token);
    const item = recorded === null ? null : await store.itemByToken(db, person.id, token);
    if (recorded === null || item === null) return null;
    return { answer: recorded, item: await withBank(item), today: today(person), settings: await settingsOf(db, person) };
  }

  async function roundEnd(person: Person, roundId: string) {
    requirePermission(person, 'study');
    if (!(await store.roundExists(db, person.id, roundId))) throw new RungwiseError('not-found');
    const recorded = await answersOfRound(db, person.id, roundId);
    const rows = await Promise.all(recorded.map(async (a) => ({ answer: a, bank: await questions.get(a.questionId, a.revision) })));
    const planning = await readPlanning({ db, clock, questions }, person);
    return { rows, today: planning.day, settings: planning.plan, more: sittingOf(planning, person, 0).length > 0 };
  }

  /** What Now shows: what rounds would hold, what is open, and what comes back when. */
  async function overview(person: Person) {
    const planning = await readPlanning({ db, clock, questions }, person);
    const left = minutesLeft(planning);
    // What is left of the day comes first where there is an exam to plan for.
    const offered = planning.plan.examDay !== null && left > 0 ? [Math.min(left, longestRound), 10, 5, 20, 0] : [10, 5, 20, 0];
    const lengths = [...new Set(offered)].map((minutes) => ({ minutes, planned: sittingOf(planning, person, minutes) }));
    const ahead = planning.plan.examDay === null ? [] : forecast(planning.pool, startOf(planning), planning.day + 5, model).days.slice(1);
    return {
      ...planning,
      left,
      lengths,
      planned: lengths[0]?.planned ?? [],
      ahead,
      open: await store.openRound(db, person.id, planning.day),
    };
  }

  return { startRound, question, answer, outcome, roundEnd, overview };
}
