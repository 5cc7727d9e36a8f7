import { requirePermission, type Person } from '../accounts/index.js';
import type { OutlookService } from '../outlook/index.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import type { ProgressService } from '../progress/index.js';
import type { QuestionsService } from '../questions/index.js';
import type { TeachingService } from '../teaching/index.js';
import * as store from './store.js';

/** What is taken away: the report and the table of a class, and a candidate's own report. */

export interface ReportsNeeds {
  db: Db;
  clock: Clock;
  questions: QuestionsService;
  teaching: TeachingService;
  progress: ProgressService;
  outlook: OutlookService;
}

export type ClassReport = Awaited<ReturnType<ReportsService['ofClass']>>;
export type OwnReport = Awaited<ReturnType<ReportsService['own']>>;
export type ReportsService = ReturnType<typeof reportsService>;

export function reportsService({ db, clock, questions, teaching, progress, outlook }: ReportsNeeds) {
  /** @throws RungwiseError `not-found` for a class of another tutor */
  async function ofClass(person: Person, classId: number) {
    requirePermission(person, 'see-classes');
    const { view, plan, mistakes } = await teaching.stand(person, classId, 'today');
    const ids = view.rows.map(({ personId }) => personId);
    const pack = view.paper?.paper.pack ?? null;
    return {
      view,
      plan,
      mistakes,
      marks: await store.marksOfClass(db, classId),
      signed: await store.signedOf(db, ids),
      firsts: await store.firstAnswers(db, ids),
      skills: (await questions.skills()).filter((row) => row.pack === pack),
    };
  }

  async function own(person: Person) {
    requirePermission(person, 'study');
    return {
      now: clock.now(),
      progress: await progress.view(person),
      outlook: await outlook.view(person),
      marks: await store.marksOf(db, person.id),
      signed: await store.signedOf(db, [person.id]),
    };
  }

  return { ofClass, own };
}
