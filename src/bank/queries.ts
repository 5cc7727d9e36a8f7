import { requirePermission, type Person } from '../accounts/index.js';
import { RungwiseError } from '../core/errors.js';
import { may } from '../core/permissions.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import type { BankQuestion, QuestionsService } from '../questions/index.js';
import * as store from './query-store.js';

/** Somebody thinks that a question is wrong; tutors see it and answer; whoever raised it sees the answer. */

/** Of one person, unanswered. Whoever finds more at once has found one big thing, and can say so. */
const mostWaiting = 20;
const listLimit = 200;

export interface QuestionAsked {
  bank: BankQuestion;
  questionId: number;
}

export type QueriesService = ReturnType<typeof queriesService>;

export function queriesService({ db, clock, questions }: { db: Db; clock: Clock; questions: QuestionsService }) {
  async function about(person: Person, questionId: number, revision: number): Promise<QuestionAsked> {
    requirePermission(person, 'raise-query');
    const bank = await questions.get(questionId, revision);
    if (bank === null) throw new RungwiseError('not-found');
    return { bank, questionId };
  }

  /** False when too many wait already. */
  async function raise(person: Person, query: { id: string; questionId: number; revision: number; body: string }): Promise<boolean> {
    await about(person, query.questionId, query.revision);
    return await store.addQuery(db, { ...query, personId: person.id, now: clock.now(), most: mostWaiting });
  }

  /** Everybody's for those who may answer, one's own for others. */
  async function list(person: Person): Promise<store.QueryRow[]> {
    requirePermission(person, 'raise-query');
    return await store.listQueries(db, { ...(answers(person) ? {} : { personId: person.id }), limit: listLimit });
  }

  /** Another's query answers as one that does not exist, except to those who may answer it. */
  async function find(person: Person, id: string): Promise<store.QueryRow> {
    requirePermission(person, 'raise-query');
    const query = await store.findQuery(db, id);
    if (query === null || (query.personId !== person.id && !answers(person))) throw new RungwiseError('not-found');
    if (query.personId === person.id && query.answer !== null && query.seenAt === null) await store.setSeen(db, id, clock.now());
    return query;
  }

  /**
   * @param before when the answer that the tutor saw was given; null for none
   * @returns false when another answer came meanwhile
   */
  async function answer(person: Person, id: string, text: string, before: Date | null): Promise<boolean> {
    requirePermission(person, 'read-bank');
    await find(person, id);
    return await store.answerQuery(db, { id, personId: person.id, text, now: clock.now(), before });
  }

  async function counts(person: Person): Promise<{ waiting: number; unseen: number }> {
    requirePermission(person, 'raise-query');
    return await store.countQueries(db, person.id);
  }

  return { about, raise, list, find, answer, counts };
}

const answers = (person: Person): boolean => may(person.role, 'read-bank');
