import { randomInt } from 'node:crypto';
import type { Person } from '../accounts/index.js';
import { classFor, type ClassHead } from '../classes/index.js';
import { mostQuestions, mostWrong, type ClassFigure } from '../core/evenings/choose.js';
import { namesOf, readWishes, type NamedQuestion, type Wishes } from '../core/evenings/wishes.js';
import { RungwiseError } from '../core/errors.js';
import { paperKinds } from '../core/papers/sheet.js';
import { randomFrom } from '../core/random.js';
import { regionIds, type Region } from '../core/syllabus.js';
import { seedFor, sheetPools, type SheetCandidate } from '../papers/index.js';
import type { Clock } from '../platform/clock.js';
import { inTransaction, type Db } from '../platform/db.js';
import type { QuestionsService } from '../questions/index.js';
import { listEvenings } from './evening-store.js';
import * as store from './making-store.js';
import type { EveningHead } from './rows.js';

/** The evenings of a class, and making another: which questions it asks is fixed with it, revision and numbers included. */

export interface EveningWish {
  eveningId: string;
  title: string;
  region: Region;
  /** Codes as typed. */
  questions: string;
  /** Codes of topics that were ticked. */
  topics: readonly string[];
  count: number;
}

export interface EveningsView {
  head: ClassHead;
  evenings: EveningHead[];
  region: Region;
  topics: { code: string; title: string }[];
  /** Codes of the questions that were asked for by their numbers, and how many of those cannot be asked. */
  proposed: { codes: string[]; leftOut: number };
  now: Date;
}

interface Pool {
  pool: SheetCandidate[];
  bank: NamedQuestion[];
}

export function makingService({ db, clock, questions }: { db: Db; clock: Clock; questions: QuestionsService }) {
  const poolOf = sheetPools(questions);

  const packOf = ({ paper }: ClassHead): string | null => paper?.split('/')[0] ?? null;

  /** @param asked numbers of questions that the form is to begin with */
  async function overview(person: Person, classId: number, asked: readonly number[]): Promise<EveningsView> {
    const head = await classFor(db, person, classId, 'hold-evenings');
    const region = (await store.usualRegion(db, classId)) ?? person.region;
    const { pool, bank } = await poolFor(head, region);
    const fitting = asked.filter((id) => bank.some(({ questionId, unfit }) => questionId === id && unfit === null));
    const own = pool.filter(({ slug }) => (packOf(head) ?? slug) === slug);
    return {
      head,
      evenings: await listEvenings(db, classId),
      region,
      topics: [...new Map(own.map(({ topic, topicTitle }) => [topic, { code: topic, title: topicTitle }])).values()],
      proposed: { codes: namesOf(fitting.slice(0, mostQuestions), bank), leftOut: asked.length - fitting.length },
      now: clock.now(),
    };
  }

  /** All packs: what is chosen comes from the class's own, and what is named may come from any. */
  async function poolFor(head: ClassHead, region: Region): Promise<Pool> {
    const rows = new Map((await questions.catalogue()).map((row) => [row.questionId, row]));
    const pool: SheetCandidate[] = [];
    for (const slug of new Set([...rows.values()].map((row) => row.slug))) pool.push(...(await poolOf(slug, region)));
    const usable = new Set(pool.map(({ questionId }) => questionId));
    const bank = (await store.codesOf(db, packOf(head))).map(({ questionId, code }): NamedQuestion => {
      const row = rows.get(questionId);
      const named = { questionId, code, slug: row?.slug ?? '', objective: row?.objective ?? '', topic: row?.topic ?? '' };
      if (row === undefined) return { ...named, unfit: 'is not asked any more' };
      if (!paperKinds.has(row.kind)) return { ...named, unfit: 'takes more than one letter to answer, so it cannot be asked here' };
      if (!row.regions.includes(region)) return { ...named, unfit: 'is not asked where that mains supply is used' };
      return { ...named, unfit: usable.has(questionId) ? null : 'has too few options to choose from' };
    });
    return { pool, bank };
  }

  /** @returns why it cannot be made, by field; nothing when it was, now or before */
  async function make(person: Person, classId: number, wish: EveningWish): Promise<{ questions?: string }> {
    const head = await classFor(db, person, classId, 'hold-evenings');
    if (!regionIds.includes(wish.region)) throw new RungwiseError('form-not-understood');
    const { pool, bank } = await poolFor(head, wish.region);
    const read = readWishes(wish.questions, bank);
    if (!read.ok) return { questions: read.why };
    const wishes = { ...read.wishes, topics: [...new Set([...read.wishes.topics, ...wish.topics])] };
    const figures = await store.classFigures(db, classId);
    const recent = new Set(await store.recentlyHeld(db, classId));
    const pack = packOf(head);
    const own = pool.filter(({ slug }) => (pack ?? slug) === slug);
    const chosen = chooseFor(wishes, own.length > 0 ? own : pool, figures, recent, wish.count);
    if ('why' in chosen) return { questions: chosen.why };
    const items = await Promise.all(chosen.ids.map((id) => itemFor(id, pool, wish.region)));
    const { eveningId, title, region } = wish;
    const evening = { eveningId, classId, title, region, madeBy: person.id, madeAt: clock.now(), items };
    await inTransaction(db, (sql) => store.addEvening(sql, evening));
    return {};
  }

  async function itemFor(questionId: number, pool: readonly SheetCandidate[], region: Region) {
    const revision = pool.find((each) => each.questionId === questionId)?.revision ?? 1;
    const bank = await questions.get(questionId, revision);
    if (bank === null) throw new RungwiseError('internal', `question ${questionId} revision ${revision} is gone`);
    return { questionId, revision, seed: seedFor(bank, region, randomFrom(`evening ${randomInt(2 ** 31)}`)) };
  }

  return { overview, make };
}

/** First what was named, then one of each objective that was named; the rest from the topics, or from everywhere when nothing was named. */
function chooseFor(
  { questionIds, objectives, topics }: Wishes,
  pool: readonly SheetCandidate[],
  figures: ReadonlyMap<number, ClassFigure>,
  recent: ReadonlySet<number>,
  count: number,
): { ids: number[] } | { why: string } {
  const ids = [...questionIds];
  const fill = (from: readonly SheetCandidate[], most: number): number => {
    const left = from.filter(({ questionId }) => !ids.includes(questionId));
    const candidates = left.map(({ slug, objective, ...each }) => ({ ...each, objective: `${slug}/${objective}` }));
    return ids.push(...mostWrong(candidates, figures, recent, most));
  };
  for (const code of objectives) {
    const before = ids.length;
    if (
      fill(
        pool.filter(({ objective }) => objective === code),
        1,
      ) === before
    )
      return { why: `${code} has no further question that one letter answers.` };
  }
  const anything = questionIds.length + objectives.length + topics.length === 0;
  const from = anything ? pool : pool.filter(({ topic }) => topics.includes(topic));
  if (from.length > 0 && ids.length < count) fill(from, count - ids.length);
  return ids.length === 0 ? { why: 'No question there can be answered with one letter. Choose others.' } : { ids };
}
