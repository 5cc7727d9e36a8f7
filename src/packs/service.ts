import type { PoolClient } from 'pg';
import type { Family } from '../core/families/schema.js';
import type { Pack } from '../core/pack.js';
import type { FixedQuestion } from '../core/questions/schema.js';
import { regionIds } from '../core/syllabus.js';
import { inTransaction, type Db } from '../platform/db.js';
import { changesAround } from './around.js';
import { hashOf } from './hash.js';
import { planOf, type PackPlan, type QuestionToWrite } from './plan.js';
import {
  findPack,
  forgetMemories,
  knownQuestions,
  lockPacks,
  writeDrawings,
  writePack,
  writeQuestions,
  writeSyllabus,
  type Origin,
} from './store.js';

export interface PacksNeeds {
  db: Db;
  /** Called in the same transaction: people who study this pack get rows for its new questions. */
  enrolAll: (sql: PoolClient, packId: number) => Promise<void>;
}

/** What was done: the plan as it was carried out. Nothing was changed when its state is `unchanged` or `refused`. */
export type LoadResult = PackPlan & { questions: number };

export type PacksService = ReturnType<typeof packsService>;

/** Puts packs into the database: all of one or nothing, and nothing twice. */
export function packsService({ db, enrolAll }: PacksNeeds) {
  /** What `load` would change now. */
  async function plan(pack: Pack): Promise<PackPlan> {
    const before = await findPack(db.pool, pack.head.id);
    const questions = questionsOf(pack);
    if (before?.contentHash === hashOf(pack)) return { ...planOf(before.version, pack.head.version, [], []), state: 'unchanged' };
    const known = before === null ? [] : await knownQuestions(db.pool, before.id, questions);
    const around = before === null ? [] : await changesAround(db.pool, before.id, pack);
    return { ...planOf(before?.version ?? null, pack.head.version, questions, known), around };
  }

  async function load(pack: Pack, origin: Origin = 'folder'): Promise<LoadResult> {
    const contentHash = hashOf(pack);
    return await inTransaction(db, async (sql): Promise<LoadResult> => {
      await lockPacks(sql);
      const before = await findPack(sql, pack.head.id);
      const questions = questionsOf(pack);
      const same = before?.contentHash === contentHash && before.origin === origin;
      const known = before === null ? [] : await knownQuestions(sql, before.id, questions);
      const planned = { ...planOf(before?.version ?? null, pack.head.version, questions, known), questions: questions.length };
      if (same) return { ...planned, state: 'unchanged' };
      if (planned.state === 'refused') return planned;
      const packId = await writePack(sql, pack, contentHash, origin);
      await writeSyllabus(sql, packId, pack);
      const drawings = pack.drawings.map((body) => ({ code: body.id, hash: hashOf(body), body }));
      await writeDrawings(sql, packId, drawings);
      await writeQuestions(sql, packId, questions, new Map(drawings.map(({ code, hash }) => [code, hash])));
      await forgetMemories(
        sql,
        packId,
        planned.changed.filter(({ keeps }) => !keeps).map(({ code }) => code),
      );
      await enrolAll(sql, packId);
      return planned;
    });
  }

  /** Whether a pack of this id comes with the server, so that nothing sent may take its place. */
  const comesWithServer = async (id: string): Promise<boolean> => (await findPack(db.pool, id))?.origin === 'folder';

  return { plan, load, comesWithServer };
}

function questionsOf(pack: Pack): QuestionToWrite[] {
  const fixed = pack.questions.map((question): QuestionToWrite => ({
    code: question.id,
    kind: question.kind,
    objective: question.objective,
    regions: question.regions ?? [...regionIds],
    revision: question.revision,
    body: question,
    hash: meaningHash(question),
    drawing: question.drawing ?? null,
    sameSince: question.sameSince ?? null,
  }));
  const numeric = pack.families.map((family): QuestionToWrite => ({
    code: family.id,
    kind: 'numeric',
    objective: family.objectives[0] as string,
    regions: regionIds.filter((region) => family.regions[region].available),
    revision: family.revision,
    body: family,
    hash: meaningHash(family),
    drawing: null,
    sameSince: family.sameSince ?? null,
  }));
  return [...fixed, ...numeric];
}

/** A hash of what people are asked and told. The day of the check and what the checker was excused from may change without a new revision. */
function meaningHash(item: FixedQuestion | Family): string {
  const { excuses: _, sameSince: __, ...rest } = item;
  return hashOf({ ...rest, checked: '' });
}
