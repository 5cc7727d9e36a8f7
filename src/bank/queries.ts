import { requirePermission, type Person } from '../accounts/index.js';
import { RungwiseError } from '../core/errors.js';
import { may } from '../core/permissions.js';
import type { Region } from '../core/syllabus.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import type { BankQuestion, QuestionsService } from '../questions/index.js';
import { putQuestion } from '../study/index.js';
import * as store from './query-store.js';

/** Somebody thinks that a question is wrong; tutors see it and answer; whoever raised it sees the answer. */

/** Of one person, unanswered. Whoever finds more at once has found one big thing, and can say so. */
const mostWaiting = 20;
const listLimit = 200;

/** Which question, and with which numbers and order it stood before somebody; null where nobody saw it so. */
export interface AboutQuestion {
  question: number;
  revision: number;
  seed: number | null;
  region: Region | null;
}

export interface QuestionAsked {
  bank: BankQuestion;
  about: AboutQuestion;
  /** The question's words, with the numbers that were seen. */
  stem: string;
}

export interface QueryView {
  query: store.QueryRow;
  stem: string;
}

export type QueriesService = ReturnType<typeof queriesService>;

export function queriesService({ db, clock, questions }: { db: Db; clock: Clock; questions: QuestionsService }) {
  async function about(person: Person, asked: AboutQuestion): Promise<QuestionAsked> {
    requirePermission(person, 'raise-query');
    const bank = await questions.get(asked.question, asked.revision);
    if (bank === null) throw new RungwiseError('not-found');
    return { bank, about: asked, stem: stemOf(bank, asked, person) };
  }

  /** False when too many wait already. */
  async function raise(person: Person, asked: AboutQuestion, id: string, body: string): Promise<boolean> {
    await about(person, asked);
    const { question: questionId, revision, seed, region } = asked;
    const query = { id, questionId, revision, seed, region, body };
    return await store.addQuery(db, { ...query, personId: person.id, now: clock.now(), most: mostWaiting });
  }

  /** Everybody's for those who may answer, one's own for others. */
  async function list(person: Person): Promise<store.QueryRow[]> {
    requirePermission(person, 'raise-query');
    return await store.listQueries(db, { ...(answers(person) ? {} : { personId: person.id }), limit: listLimit });
  }

  /** Another's query answers as one that does not exist, except to those who may answer it. */
  async function find(person: Person, id: string): Promise<QueryView> {
    requirePermission(person, 'raise-query');
    const query = await store.findQuery(db, id);
    if (query === null || (query.personId !== person.id && !answers(person))) throw new RungwiseError('not-found');
    if (query.personId === person.id && query.answer !== null && query.seenAt === null) await store.setSeen(db, id, clock.now());
    const { bank } = await about(person, { ...query, question: query.questionId });
    return { query, stem: stemOf(bank, query, person) };
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

  async function counts(person: Person): Promise<store.QueryCounts> {
    requirePermission(person, 'raise-query');
    return await store.countQueries(db, person.id);
  }

  return { about, raise, list, find, answer, counts };
}

function stemOf(bank: BankQuestion, { seed, region }: { seed: number | null; region: Region | null }, person: Person): string {
  if (bank.item.kind === 'fixed') return bank.item.question.stem;
  const wished = region ?? (person.region as Region);
  return bank.item.compiled(wished) === null ? bank.item.family.title : putQuestion(bank, seed ?? 1, wished).stem;
}

const answers = (person: Person): boolean => may(person.role, 'read-bank');
