import { requirePermission, type Person } from '../accounts/index.js';
import { dayNumber } from '../core/calendar.js';
import { nextMeeting } from '../core/classes/meeting.js';
import { openerOf, type Mistake } from '../core/classes/mistakes.js';
import type { TeachAgain } from '../core/classes/teach.js';
import { localText } from '../core/local-time.js';
import { paperKinds } from '../core/papers/sheet.js';
import { cautionSchema, objectiveSchema, type Caution, type Objective, type Region } from '../core/syllabus.js';
import type { CatalogueRow, SkillRow } from '../questions/index.js';
import type { GridNeeds, GridService, GridView } from './grid-service.js';
import { mistakesOf } from './mistakes.js';
import { lastAnswers, objectivesOf, type LastAnswerRow } from './plan-store.js';

/** What to teach at the next meeting: which objectives again, the mistakes behind them, questions to open with, something to show. */

/** As many as fit an evening beside new matter, and questions to open it with. */
const taught = 3;
const openerQuestions = 6;

export interface PlanItem {
  rank: TeachAgain;
  objective: Objective;
  topicTitle: string;
  caution: Caution | null;
  mistakes: (Mistake & { text: string })[];
}

export interface PlanOpener {
  questionId: number;
  objective: string;
  code: string;
  stem: string;
  wrong: number;
}

export interface PlanView {
  grid: GridView;
  /** Day number of the next meeting; null without a fixed day. */
  meeting: number | null;
  items: PlanItem[];
  /** Too few answers to tell: the objectives with most at stake, with their titles. */
  unsure: (TeachAgain & { title: string })[];
  opener: PlanOpener[];
  /** Something to show that belongs to what is taught. */
  practical: SkillRow | null;
  cautions: readonly Caution[];
}

export function planService({ db, questions, grid }: Pick<GridNeeds, 'db' | 'questions'> & { grid: GridService }) {
  async function view(person: Person, classId: number): Promise<PlanView> {
    requirePermission(person, 'see-classes');
    return await planFor(await grid.view(person, classId, 'today'));
  }

  /** @param view the grid that the plan is made from, which was seen with leave already */
  async function planFor(view: GridView): Promise<PlanView> {
    const { head, now, paper, ranked } = view;
    const minutes = localText(now.getTime(), head.timeZone).slice(11).split(':').map(Number) as [number, number];
    const meeting = nextMeeting(head, dayNumber(now.getTime(), head.timeZone), minutes[0] * 60 + minutes[1]);
    const base = { grid: view, meeting };
    if (paper === null) return { ...base, items: [], unsure: [], opener: [], practical: null, cautions: [] };
    const { pack } = paper.paper;
    const codes = ranked.known.slice(0, taught).map(({ objective }) => objective);
    const catalogue = (await questions.catalogue()).filter(({ slug }) => slug === pack);
    const region = commonRegion(view);
    const answers = codes.length === 0 ? [] : await lastAnswers(db, head.classId, pack, codes);
    const items = await itemsOf(ranked.known.slice(0, taught), pack, answers);
    const titles = new Map(catalogue.map(({ objective, objectiveTitle }) => [objective, objectiveTitle]));
    const practical = practicalFor(items, await questions.skills(), pack, region);
    const cautions = [...items.map(({ caution }) => caution), practical?.caution ?? null].flatMap((caution) => caution ?? []);
    return {
      ...base,
      items,
      unsure: ranked.unsure.map((each) => ({ ...each, title: titles.get(each.objective) ?? '' })),
      opener: await openerFor(codes, catalogue, answers, region),
      practical,
      cautions: cautions.filter(({ id }, index) => cautions.findIndex((other) => other.id === id) === index),
    };
  }

  async function itemsOf(ranks: readonly TeachAgain[], pack: string, answers: readonly LastAnswerRow[]): Promise<PlanItem[]> {
    const rows = await objectivesOf(
      db,
      pack,
      ranks.map(({ objective }) => objective),
    );
    const items: PlanItem[] = [];
    for (const rank of ranks) {
      const row = rows.find(({ code }) => code === rank.objective);
      if (row === undefined) continue;
      const objective = objectiveSchema.parse(row.body);
      const caution =
        cautionSchema
          .array()
          .parse(row.cautions)
          .find(({ id }) => id === objective.caution) ?? null;
      const own = answers.filter((answer) => answer.objective === rank.objective);
      items.push({ rank, objective, topicTitle: row.topicTitle, caution, mistakes: await mistakesOf(questions, own) });
    }
    return items;
  }

  async function openerFor(
    codes: readonly string[],
    catalogue: readonly CatalogueRow[],
    answers: readonly LastAnswerRow[],
    region: Region,
  ): Promise<PlanOpener[]> {
    const fitting = catalogue.filter(
      ({ kind, regions, objective }) => paperKinds.has(kind) && regions.includes(region) && codes.includes(objective),
    );
    const wrong = new Map<number, number>();
    for (const { questionId, right } of answers) if (!right) wrong.set(questionId, (wrong.get(questionId) ?? 0) + 1);
    const chosen = openerOf(
      codes,
      fitting.map(({ questionId, objective }) => ({ questionId, objective, wrong: wrong.get(questionId) ?? 0 })),
      openerQuestions,
    );
    return await Promise.all(
      chosen.map(async ({ questionId, objective, wrong: count }) => {
        const revision = fitting.find((each) => each.questionId === questionId)?.revision ?? 1;
        const bank = await questions.get(questionId, revision);
        const stem = bank === null ? '' : bank.item.kind === 'fixed' ? bank.item.question.stem : bank.item.family.title;
        return { questionId, objective, code: bank?.code ?? '', stem, wrong: count };
      }),
    );
  }

  return { view, planFor };
}

/** The region that most of the class live in, whose mains their practical is shown with. */
export function commonRegion({ rows }: Pick<GridView, 'rows'>): Region {
  const counts = new Map<Region, number>();
  for (const { region } of rows) counts.set(region, (counts.get(region) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 'uk';
}

/** One that shows an objective that is taught, the most urgent first; else one from the same topic. */
function practicalFor(items: readonly PlanItem[], skills: readonly SkillRow[], pack: string, region: Region): SkillRow | null {
  const fitting = skills.filter((row) => row.pack === pack && (row.skill.regions === undefined || row.skill.regions.includes(region)));
  const codes = items.map(({ rank }) => rank.objective);
  const shows = (wanted: (code: string) => boolean): SkillRow | undefined => fitting.find(({ skill }) => skill.objectives.some(wanted));
  for (const code of codes) {
    const found = shows((each) => each === code);
    if (found !== undefined) return found;
  }
  for (const code of codes) {
    const found = shows((each) => each.slice(0, 2) === code.slice(0, 2));
    if (found !== undefined) return found;
  }
  return null;
}
