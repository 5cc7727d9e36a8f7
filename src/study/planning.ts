import { answeredOn, type AnsweredToday } from '../answers/index.js';
import type { Person } from '../accounts/index.js';
import { dayNumber } from '../core/calendar.js';
import { memoryModel } from '../core/memory.js';
import { paperWeights, secondsFor, type PlanCandidate, type PlannedQuestion } from '../core/plan/candidate.js';
import { planSitting, type Sitting } from '../core/plan/day.js';
import { objectiveSitting } from '../core/plan/on-objective.js';
import { plainSettings } from '../core/plan/settings.js';
import { randomFrom } from '../core/random.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import type { CatalogueRow, PaperRow, QuestionsService } from '../questions/index.js';
import type { RoundForm } from './forms.js';
import { memoryOf } from './memory-row.js';
import { findPlan, type PlanRow } from './plan-store.js';
import { readMemories, type MemoryOfQuestion } from './store.js';

/** What a candidate's plan is made from, read once, and sittings planned from it. */

export interface Planning {
  day: number;
  plan: PlanRow;
  /** Null until the candidate has said anything of an exam. */
  saved: boolean;
  paper: PaperRow | null;
  papers: readonly PaperRow[];
  pool: readonly PlannedRow[];
  today: AnsweredToday;
}

export type PlannedRow = CatalogueRow & MemoryOfQuestion & PlanCandidate;

export interface PlanningNeeds {
  db: Db;
  clock: Clock;
  questions: QuestionsService;
}

/** The paper that stands for all until one is chosen. */
const usualQuestions = 26;

const plainPlan: PlanRow = { ...plainSettings, paper: null, calendarKey: 1 };

/** What somebody said of their time, or what stands until they do. */
export const settingsOf = async (db: Db, { id }: Pick<Person, 'id'>): Promise<PlanRow> => (await findPlan(db, id)) ?? plainPlan;

/** What of a person a plan is made from. */
export type Planner = Pick<Person, 'id' | 'timeZone' | 'region'>;

export async function readPlanning({ db, clock, questions }: PlanningNeeds, person: Planner): Promise<Planning> {
  const day = dayNumber(clock.now().getTime(), person.timeZone);
  const found = await findPlan(db, person.id);
  const plan = found ?? plainPlan;
  const [rows, papers, today] = [await readPool({ db, questions }, person), await questions.papers(), await answeredOn(db, person.id, day)];
  const paper =
    papers.find((each) => nameOf(each) === plan.paper) ??
    papers.find(({ blueprint }) => blueprint.questions === usualQuestions) ??
    papers[0] ??
    null;
  const weights = paperWeights(
    rows.map(([{ questionId, slug, topic }]) => ({ questionId, pack: slug, topic })),
    paper === null ? null : { pack: paper.pack, shares: paper.blueprint.shares },
  );
  const pool = rows.map(([question, memory]) => plannedRow(question, memory, weights.get(question.questionId) ?? 1));
  return { day, plan, saved: found !== null, paper, papers, pool, today };
}

/** What is asked where somebody lives, with what they know of it: in the order of the syllabus, pack by pack. */
async function readPool(
  { db, questions }: Pick<PlanningNeeds, 'db' | 'questions'>,
  person: Planner,
): Promise<[CatalogueRow, MemoryOfQuestion][]> {
  const [catalogue, memories] = [await questions.catalogue(), await readMemories(db, person.id)];
  const known = new Map(memories.map((memory) => [memory.questionId, memory]));
  return catalogue.flatMap((row): [CatalogueRow, MemoryOfQuestion][] => {
    const memory = known.get(row.questionId);
    return memory === undefined || !row.regions.includes(person.region) ? [] : [[row, memory]];
  });
}

/** Field by field: spreading two rows into one, 500 times over, took nine tenths of the time of a plan. */
function plannedRow(question: CatalogueRow, known: MemoryOfQuestion, paperWeight: number): PlannedRow {
  const { questionId, kind, revision, regions, objective, objectiveTitle, weight, topic, topicTitle, pack, slug } = question;
  const { stability, difficulty, lastDay, dueDay, surelyWrong } = known;
  const seconds = kind === 'numeric' ? secondsFor.number : secondsFor.options;
  const memory = memoryOf(known);
  return {
    questionId,
    kind,
    revision,
    regions,
    objective,
    objectiveTitle,
    weight,
    topic,
    topicTitle,
    pack,
    slug,
    stability,
    difficulty,
    lastDay,
    dueDay,
    surelyWrong,
    memory,
    paperWeight,
    seconds,
  };
}

/** How a paper is called in an address, a form and the database. */
export const nameOf = ({ pack, blueprint }: Pick<PaperRow, 'pack' | 'blueprint'>): string => `${pack}/${blueprint.id}`;

/** Where the day stands. */
export function startOf({ day, plan, today }: Pick<Planning, 'day' | 'plan' | 'today'>): Omit<Sitting, 'seconds'> {
  const secondsToday = today.options * secondsFor.options + today.numbers * secondsFor.number;
  return { today: day, settings: plan, secondsToday, metToday: today.met };
}

/** Of the minutes that the candidate gave the day. */
export function minutesLeft(planning: Pick<Planning, 'day' | 'plan' | 'today'>): number {
  return Math.max(0, Math.ceil(planning.plan.minutes - startOf(planning).secondsToday / 60));
}

/** @param minutes 0 for just one question */
export function sittingOf({ day, plan, pool, today }: Planning, person: Planner, minutes: number): PlannedQuestion[] {
  const sitting = { ...startOf({ day, plan, today }), seconds: minutes === 0 ? null : minutes * 60 };
  return planSitting(pool, sitting, memoryModel(), randomFrom(`${person.id} ${day}`));
}

/** What a round holds: so many minutes of the plan, or the questions of one objective. */
export function wished(planning: Planning, person: Planner, wish: RoundForm): PlannedQuestion[] {
  if ('minutes' in wish) return sittingOf(planning, person, wish.minutes);
  const own = planning.pool.filter(({ slug, objective }) => `${slug}/${objective}` === wish.objective);
  return objectiveSitting(own, planning.day, memoryModel());
}
