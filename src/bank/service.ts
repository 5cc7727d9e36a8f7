import { requirePermission, type Person } from '../accounts/index.js';
import { RungwiseError } from '../core/errors.js';
import { regionIds, type Region } from '../core/syllabus.js';
import type { Db } from '../platform/db.js';
import type { BankQuestion, QuestionsService } from '../questions/index.js';
import { putQuestion, type PutQuestion } from '../study/index.js';
import { listQueries, type QueryRow } from './query-store.js';
import * as store from './store.js';

/** The bank for those who teach from it or write for it: found by topic, objective, kind and words, each question with its key. */

export interface BankSearch {
  topicId: number | null;
  objectiveId: number | null;
  kind: string | null;
  text: string;
  retired: boolean;
  /** From 1. */
  page: number;
}

export interface BankList {
  search: BankSearch;
  entries: store.BankEntry[];
  total: number;
  pages: number;
  objectives: store.ObjectiveEntry[];
}

export interface BankView {
  questionId: number;
  bank: BankQuestion;
  put: PutQuestion;
  seed: number;
  region: Region;
  /** Where the question or its numbers are for. */
  regions: readonly Region[];
  head: store.QuestionHead;
  revisions: store.RevisionEntry[];
  queries: QueryRow[];
  /** The search that led here. */
  search: BankSearch;
}

const pageSize = 50;
const mostQueries = 20;

export type BankService = ReturnType<typeof bankService>;

export function bankService({ db, questions }: { db: Db; questions: QuestionsService }) {
  async function list(person: Person, search: BankSearch): Promise<BankList> {
    requirePermission(person, 'read-bank');
    const entries = await store.findEntries(db, { ...search, limit: pageSize, offset: (search.page - 1) * pageSize });
    const total = entries[0]?.total ?? 0;
    return { search, entries, total, pages: Math.max(1, Math.ceil(total / pageSize)), objectives: await store.listObjectives(db) };
  }

  /** @param at null stands for the present revision, the first order or numbers, and the person's own region */
  async function question(
    person: Person,
    questionId: number,
    at: { revision: number | null; seed: number | null; region: Region | null },
    search: BankSearch,
  ): Promise<BankView> {
    requirePermission(person, 'read-bank');
    const head = await store.findHead(db, questionId);
    const bank = head === null ? null : await questions.get(questionId, at.revision ?? head.currentRevision);
    if (head === null || bank === null) throw new RungwiseError('not-found');
    const seed = at.seed ?? 1;
    const regions = regionsOf(bank);
    const wished = at.region ?? (person.region as Region);
    const region = regions.includes(wished) ? wished : (regions[0] ?? 'uk');
    const [revisions, queries] = [await store.listRevisions(db, questionId), await listQueries(db, { questionId, limit: mostQueries })];
    return { questionId, bank, put: putQuestion(bank, seed, region), seed, region, regions, head, revisions, queries, search };
  }

  return { list, question };
}

function regionsOf({ item }: BankQuestion): readonly Region[] {
  if (item.kind === 'numeric') return regionIds.filter((region) => item.compiled(region) !== null);
  return item.question.regions ?? regionIds;
}
