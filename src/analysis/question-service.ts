import type { Person } from '../accounts/index.js';
import { classFor, tutorOf, type ClassHead } from '../classes/index.js';
import type { Verdict } from '../core/analysis/flags.js';
import { fewestOthers } from '../core/analysis/first-sight.js';
import { gathered, type GatheredFigures } from '../core/analysis/gathered.js';
import { partFigures, type PartFigures } from '../core/analysis/parts.js';
import { RungwiseError } from '../core/errors.js';
import { isTooFew } from '../core/group-figures.js';
import { regionIds, type Region } from '../core/syllabus.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import type { BankQuestion, QuestionsService } from '../questions/index.js';
import { putQuestion, type PutQuestion } from '../study/index.js';
import { readOutlines, readQueries, type OutlineRow, type QueryLine } from './question-outline-store.js';
import { readTallies, type Scope, type TallyRow } from './question-tally-store.js';
import { intervalsOf, rankOf, verdictOf, wordingsOf } from './question-verdict.js';

/** Which question is bad: what people's first answers say of each question, for one class, for the club, for all. */

export interface AnalysedQuestion {
  outline: OutlineRow;
  figures: GatheredFigures;
  verdict: Verdict;
  queries: QueryLine[];
}

export interface ClassQuestions {
  head: ClassHead;
  scope: Scope;
  now: Date;
  /** Worst first; those that are shown in full have what the bank says. */
  look: (AnalysedQuestion & { bank: BankQuestion | null })[];
  /** With enough answers and no sign. */
  sound: AnalysedQuestion[];
  tooFew: AnalysedQuestion[];
  /** How many stay hidden, since too few people beyond the viewer's classes answered them. */
  hidden: number;
  /** How many intervals could have raised a sign. */
  intervals: number;
}

export interface QuestionView {
  head: ClassHead;
  scope: Scope;
  now: Date;
  outline: OutlineRow;
  bank: BankQuestion;
  put: PutQuestion;
  queries: QueryLine[];
  /** Null where the figures stay hidden. */
  seen: { figures: GatheredFigures; verdict: Verdict; parts: PartFigures[] } | null;
}

/** Shown in full; more is no evening's work. */
export const shownInFull = 12;

export type QuestionFiguresService = ReturnType<typeof questionFiguresService>;

export function questionFiguresService({ db, clock, questions }: { db: Db; clock: Clock; questions: QuestionsService }) {
  /** @param scope whose answers */
  async function list(person: Person, classId: number, scope: Scope): Promise<ClassQuestions> {
    const head = await classFor(db, person, classId, 'analyse-questions');
    const outlines = await readOutlines(db, null);
    const tallies = byQuestion(await readTallies(db, { scope, classId, tutorId: tutorOf(person) }, fewestOthers, null));
    const met = outlines.filter(({ questionId }) => tallies.has(questionId));
    const shown = met.filter(({ questionId }) => !isHidden(tallies.get(questionId) ?? []));
    const queries = byQuestion(
      await readQueries(
        db,
        shown.map(({ questionId }) => questionId),
        true,
      ),
    );
    const all = shown.map((outline) => analysed(outline, tallies.get(outline.questionId) ?? [], queries.get(outline.questionId) ?? []));
    const look = all.filter(isToLookAt).sort(worstFirst);
    const others = all.filter((question) => !isToLookAt(question));
    return {
      head,
      scope,
      now: clock.now(),
      look: await Promise.all(
        look.map(async (question, place) => ({ ...question, bank: place < shownInFull ? await bankOf(question) : null })),
      ),
      sound: others.filter(({ verdict }) => !verdict.tooFew),
      tooFew: others.filter(({ verdict }) => verdict.tooFew),
      hidden: met.length - shown.length,
      intervals: all.reduce((sum, { figures }) => sum + intervalsOf(figures), 0),
    };
  }

  /** A question that is asked no more, and one that never was, answer alike. */
  async function one(person: Person, classId: number, questionId: number, scope: Scope): Promise<QuestionView> {
    const head = await classFor(db, person, classId, 'analyse-questions');
    const outline = (await readOutlines(db, questionId))[0];
    const bank = outline === undefined ? null : await questions.get(questionId, outline.revision);
    if (outline === undefined || bank === null) throw new RungwiseError('not-found');
    const tallies = await readTallies(db, { scope, classId, tutorId: tutorOf(person) }, fewestOthers, questionId);
    const put = putQuestion(bank, 1, regionFor(bank, person));
    const queries = await readQueries(db, [questionId], false);
    const view = { head, scope, now: clock.now(), outline, bank, put, queries };
    if (isHidden(tallies)) return { ...view, seen: null };
    const { figures, verdict } = analysed(outline, tallies, queries);
    return { ...view, seen: { figures, verdict, parts: partsOf(put, outline, tallies) } };
  }

  const bankOf = ({ outline }: AnalysedQuestion): Promise<BankQuestion | null> => questions.get(outline.questionId, outline.revision);

  return { list, one };
}

function analysed(outline: OutlineRow, tallies: readonly TallyRow[], queries: QueryLine[]): AnalysedQuestion {
  const figures = gathered(tallies, wordingsOf(outline), outline.revision);
  return { outline, figures, verdict: verdictOf(outline, figures), queries };
}

/** Parts may stand in another order in another revision, so only answers to the present one are looked at. */
function partsOf({ task }: PutQuestion, { revision }: OutlineRow, tallies: readonly TallyRow[]): PartFigures[] {
  const present = tallies.filter((tally) => tally.first && tally.revision === revision);
  return partFigures(
    task,
    present.flatMap(({ given, answers }) => (given === null ? [] : [{ given, answers }])),
  );
}

/**
 * Beyond a tutor's own classes figures carry no names, yet they could give one away: who knows the answers of the own class takes them from
 * those of the club, and what is left is another class's. So each step outward (own classes, all classes, everybody) must add nobody or at
 * least five people to a question, or its figures stay hidden. Whoever sees all classes anyway is held to it for those in no class. It does
 * not keep somebody from looking before and after an evening and taking the difference; a count of five is no more than a fair screen.
 */
function isHidden(tallies: readonly TallyRow[]): boolean {
  const sum = (of: 'beyond' | 'outside'): number => tallies.reduce((total, tally) => total + tally[of], 0);
  return [sum('beyond'), sum('outside')].some(isTooFew);
}

/** Somebody's query is a sign too, and with few answers the only one. */
const isToLookAt = ({ verdict, queries }: AnalysedQuestion): boolean =>
  queries.length > 0 || verdict.signs.some(({ severity }) => severity === 'look');

function worstFirst(a: AnalysedQuestion, b: AnalysedQuestion): number {
  const share = ({ figures }: AnalysedQuestion): number => figures.right / figures.n;
  return rankOf(a.verdict.signs) - rankOf(b.verdict.signs) || b.queries.length - a.queries.length || share(a) - share(b);
}

function byQuestion<T extends { questionId: number }>(rows: readonly T[]): Map<number, T[]> {
  const found = new Map<number, T[]>();
  for (const row of rows) {
    const list = found.get(row.questionId);
    if (list === undefined) found.set(row.questionId, [row]);
    else list.push(row);
  }
  return found;
}

/** The viewer's own region, where the question has numbers for it. */
function regionFor({ item }: BankQuestion, person: Person): Region {
  const own = person.region as Region;
  if (item.kind === 'fixed') return own;
  return [own, ...regionIds].find((region) => item.compiled(region) !== null) ?? own;
}
