import { requirePermission, type Person } from '../accounts/index.js';
import { memoryModel } from '../core/memory.js';
import { firstSightChances, type FirstSights, type OutlookQuestion } from '../core/outlook/chance.js';
import { bestGains, expectedAfter, outlookOf, type Outlook } from '../core/outlook/outlook.js';
import { forecast } from '../core/plan/forecast.js';
import type { PaperRow } from '../questions/index.js';
import { nameOf, readPlanning, startOf, type Planner, type Planning, type PlanningNeeds } from '../study/index.js';
import { neededQuestions } from './needed.js';
import { onPaper } from './on-paper.js';
import * as store from './store.js';

/** Whether somebody will pass: told as a range, kept each day, and never as a certainty. */

export interface OutlookView {
  day: number;
  /** Null where no pack has a paper. */
  paper: PaperRow | null;
  examDay: number | null;
  /** Questions of the pack that were met, and how many must be before anything is said. */
  met: number;
  /** Questions of the pack in all. */
  of: number;
  needed: number;
  /** If the paper were sat tomorrow: on the day itself everything answered would count as known. Null while too few were met. */
  tomorrow: Outlook | null;
  /** On the day of the exam, if the plan is kept; null without one. */
  atExam: Outlook | null;
  gains: { objective: string; title: string; minutes: number }[];
  history: store.OutlookRow[];
  topics: ReadonlyMap<string, string>;
}

export type OutlookService = ReturnType<typeof outlookService>;

export function outlookService({ db, clock, questions }: PlanningNeeds) {
  const model = memoryModel();

  async function view(person: Person): Promise<OutlookView> {
    requirePermission(person, 'study');
    const planning = await readPlanning({ db, clock, questions }, person);
    const { day, paper, plan } = planning;
    const own = planning.pool.filter(({ slug }) => slug === paper?.pack);
    const asked = onPaper(own);
    const met = own.filter(({ memory }) => memory !== null).length;
    const topics = new Map(own.map((row) => [row.topic, row.topicTitle]));
    const base = { day, paper, examDay: plan.examDay, met, of: own.length, needed: Math.min(neededQuestions, own.length), topics };
    if (paper === null || met < base.needed) return { ...base, tomorrow: null, atExam: null, gains: [], history: [] };
    const sights = await store.firstSights(db, person.id, paper.pack);
    const input = { questions: asked, paper: paper.blueprint, day: day + 1, firstSights: sights };
    const [tomorrow, atExam] = [outlookOf(input, model), examOutlook(planning, asked, paper, sights)];
    const shown = atExam ?? tomorrow;
    const forDay = atExam === null || plan.examDay === null ? day + 1 : plan.examDay;
    const name = nameOf(paper);
    await store.keepOutlook(db, person.id, { day, forDay, paper: name, low: shown.low, high: shown.high, met });
    const titles = new Map(own.map((row) => [row.objective, row.objectiveTitle]));
    const gains = bestGains({ ...input, day: forDay }, day, model).map(({ objective, minutes }) => ({
      objective,
      title: titles.get(objective) ?? '',
      minutes: Math.max(1, Math.round(minutes)),
    }));
    return { ...base, tomorrow, atExam, gains, history: await store.listOutlooks(db, person.id, name) };
  }

  /** As the plan is expected to leave things on the day of the exam. */
  function examOutlook(planning: Planning, own: Planning['pool'], paper: PaperRow, sights: readonly FirstSights[]): Outlook | null {
    const { day, plan } = planning;
    if (plan.examDay === null || plan.examDay <= day) return null;
    const known = firstSightChances(sights);
    const all = new Map(planning.pool.map((row) => [row.questionId, row]));
    // Right at first sight holds luck, so less of it is knowledge.
    const overall = Math.max(0, (known('') - 0.25) / 0.75);
    const { memories } = forecast([...all.values()], startOf(planning), plan.examDay - 1, model, (memory, on) =>
      expectedAfter(memory, overall, on, model),
    );
    const questions = own.map((row): OutlookQuestion => ({ ...row, memory: memories.get(row.questionId) ?? null, surelyWrong: false }));
    return outlookOf({ questions, paper: paper.blueprint, day: plan.examDay, firstSights: sights }, model);
  }

  /** For a paper about to be sat: as things stand, or null while too few of its pack's questions were met. */
  async function chanceOf(person: Planner, paper: PaperRow): Promise<{ low: number; high: number } | null> {
    const { day, pool } = await readPlanning({ db, clock, questions }, person);
    const own = pool.filter(({ slug }) => slug === paper.pack);
    const met = own.filter(({ memory }) => memory !== null).length;
    if (met < Math.min(neededQuestions, own.length)) return null;
    const sights = await store.firstSights(db, person.id, paper.pack);
    const { low, high } = outlookOf({ questions: onPaper(own), paper: paper.blueprint, day: day + 1, firstSights: sights }, model);
    return { low, high };
  }

  return { view, chanceOf };
}
