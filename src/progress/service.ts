import { requirePermission, type Person } from '../accounts/index.js';
import { memoryModel } from '../core/memory.js';
import { fadingNext, laddersOf, type Fading, type Ladder } from '../core/progress/ladders.js';
import { certaintyRows, type CertaintyRow } from '../core/progress/sureness.js';
import { readPlanning, type PlanningNeeds } from '../study/index.js';
import * as store from './store.js';
import { pageOf } from './words.js';

/** How far somebody has come, in the words of the syllabus. */

export interface ProgressView {
  day: number;
  ladders: Ladder[];
  fading: Fading[];
  certainty: CertaintyRow[];
  time: store.DayRow[];
}

export interface AnswerSearch {
  text: string;
  show: store.AnswerFilter;
  /** From 1 on. */
  page: number;
}

export interface AnswersView {
  search: AnswerSearch;
  rows: store.GivenRow[];
  total: number;
}

export type ProgressService = ReturnType<typeof progressService>;

export function progressService({ db, clock, questions }: PlanningNeeds) {
  const model = memoryModel();

  async function view(person: Person): Promise<ProgressView> {
    requirePermission(person, 'study');
    const { day, pool } = await readPlanning({ db, clock, questions }, person);
    const [certainty, time] = [await store.countCertainty(db, person.id), await store.timeByDay(db, person.id)];
    return { day, ladders: laddersOf(pool, day, model), fading: fadingNext(pool, day, model), certainty: certaintyRows(certainty), time };
  }

  async function answers(person: Person, search: AnswerSearch): Promise<AnswersView> {
    requirePermission(person, 'study');
    const rows = await store.findAnswers(db, person.id, { ...search, limit: pageOf, offset: (search.page - 1) * pageOf });
    return { search, rows, total: rows[0]?.total ?? 0 };
  }

  return { view, answers };
}
