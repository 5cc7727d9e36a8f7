import { createHash } from 'node:crypto';
import type { PoolClient } from 'pg';
import type { Family } from '../core/families/schema.js';
import type { Pack } from '../core/pack.js';
import type { FixedQuestion } from '../core/questions/schema.js';
import { regionIds } from '../core/syllabus.js';
import { inTransaction, type Db } from '../platform/db.js';
import {
  findPack,
  findUnraised,
  lockPacks,
  writeDrawings,
  writePack,
  writeQuestions,
  writeSyllabus,
  type QuestionToWrite,
} from './store.js';

export interface PacksNeeds {
  db: Db;
  /** Called in the same transaction: people who study this pack get rows for its new questions. */
  enrolAll: (sql: PoolClient, packId: number) => Promise<void>;
}

export type LoadResult =
  | { state: 'unchanged'; version: string }
  | { state: 'loaded'; version: string; questions: number; retired: number }
  /** Nothing was changed: these ids have a new text under an old revision. */
  | { state: 'refused'; codes: string[] };

/** Puts a pack into the database: all of it or nothing, and nothing twice. */
export function packsService({ db, enrolAll }: PacksNeeds) {
  async function load(pack: Pack): Promise<LoadResult> {
    const contentHash = hashOf(pack);
    return await inTransaction(db, async (sql): Promise<LoadResult> => {
      await lockPacks(sql);
      const before = await findPack(sql, pack.head.id);
      if (before?.contentHash === contentHash) return { state: 'unchanged', version: before.version };
      const questions = questionsOf(pack);
      const codes = before === null ? [] : await findUnraised(sql, before.id, questions);
      if (codes.length > 0) return { state: 'refused', codes };
      const packId = await writePack(sql, pack, contentHash);
      await writeSyllabus(sql, packId, pack);
      const drawings = pack.drawings.map((body) => ({ code: body.id, hash: hashOf(body), body }));
      await writeDrawings(sql, packId, drawings);
      const hashes = new Map(drawings.map(({ code, hash }) => [code, hash]));
      const { retired } = await writeQuestions(sql, packId, questions, hashes);
      await enrolAll(sql, packId);
      return { state: 'loaded', version: pack.head.version, questions: questions.length, retired };
    });
  }

  return { load };
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
  }));
  return [...fixed, ...numeric];
}

/** A hash of what people are asked and told. The day of the check and what the checker was excused from may change without a new revision. */
function meaningHash(item: FixedQuestion | Family): string {
  const { excuses: _, sameSince: __, ...rest } = item;
  return hashOf({ ...rest, checked: '' });
}

/** A hash of the content, whatever the order in which it was written down. */
function hashOf(value: unknown): string {
  return createHash('sha256')
    .update(JSON.stringify(sorted(value)))
    .digest('hex');
}

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, inner]) => [key, sorted(inner)]),
  );
}
