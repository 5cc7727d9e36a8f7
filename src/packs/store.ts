import type { Pool, PoolClient } from 'pg';
import type { Drawing } from '../core/drawing.js';
import type { Pack } from '../core/pack.js';
import type { KnownQuestion, QuestionToWrite } from './plan.js';

/** Writing a pack: every statement takes the whole list at once and runs inside the caller's transaction. */

/** One pack is loaded at a time, by whichever server comes first; the others wait and find it done. */
export async function lockPacks(sql: PoolClient): Promise<void> {
  await sql.query('SELECT pg_advisory_xact_lock(7264201)');
}

export interface PackRow {
  id: number;
  contentHash: string;
  version: string;
  origin: Origin;
}

/** `folder`: it comes with the server, and is read at every start. */
export type Origin = 'folder' | 'added';

export async function findPack(sql: PoolClient | Pool, slug: string): Promise<PackRow | null> {
  const { rows } = await sql.query<PackRow>('SELECT id, content_hash AS "contentHash", version, origin FROM pack WHERE slug = $1', [slug]);
  return rows[0] ?? null;
}

export async function writePack(sql: PoolClient, pack: Pack, contentHash: string, origin: Origin): Promise<number> {
  const { rows } = await sql.query<{ id: number }>(
    `INSERT INTO pack (slug, title, version, licence, language, regions, content_hash, cautions, sources, blueprints, skills, origin)
     VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12)
     ON CONFLICT (slug) DO UPDATE SET title = excluded.title, version = excluded.version, licence = excluded.licence, language = excluded.language,
       regions = excluded.regions, content_hash = excluded.content_hash, cautions = excluded.cautions, sources = excluded.sources, blueprints = excluded.blueprints,
       skills = excluded.skills, origin = excluded.origin, loaded_at = now()
     RETURNING id`,
    [
      pack.head.id,
      pack.head.title,
      pack.head.version,
      pack.head.licence,
      pack.head.language,
      pack.head.regions,
      contentHash,
      JSON.stringify(pack.cautions),
      JSON.stringify(pack.sources),
      JSON.stringify(pack.blueprints),
      JSON.stringify(pack.skills),
      origin,
    ],
  );
  return (rows[0] as { id: number }).id;
}

export async function writeSyllabus(sql: PoolClient, packId: number, pack: Pack): Promise<void> {
  await sql.query(
    `INSERT INTO topic (pack_id, code, title, blurb, position)
     SELECT $1, code, title, blurb, position FROM jsonb_to_recordset($2) AS t(code text, title text, blurb text, position int)
     ON CONFLICT (pack_id, code) DO UPDATE SET title = excluded.title, blurb = excluded.blurb, position = excluded.position`,
    [packId, JSON.stringify(pack.topics.map((topic, position) => ({ ...topic, position })))],
  );
  await sql.query(
    `INSERT INTO objective (topic_id, code, title, weight, position, body)
     SELECT t.id, o.code, o.title, o.weight, o.position, o.body
     FROM jsonb_to_recordset($2) AS o(topic text, code text, title text, weight int, position int, body jsonb)
       JOIN topic t ON t.pack_id = $1 AND t.code = o.topic
     ON CONFLICT (topic_id, code) DO UPDATE SET title = excluded.title, weight = excluded.weight, position = excluded.position, body = excluded.body`,
    [
      packId,
      JSON.stringify(
        pack.objectives.map((o, position) => ({ topic: o.topic, code: o.code, title: o.title, weight: o.weight, position, body: o })),
      ),
    ],
  );
}

/** Adds what is new among the drawings, under the hash of their content. */
export async function writeDrawings(
  sql: PoolClient,
  packId: number,
  drawings: { code: string; hash: string; body: Drawing }[],
): Promise<void> {
  await sql.query(
    `INSERT INTO drawing (pack_id, code, content_hash, body)
     SELECT $1, code, hash, body FROM jsonb_to_recordset($2) AS d(code text, hash text, body jsonb) ORDER BY code
     ON CONFLICT (pack_id, code, content_hash) DO NOTHING`,
    [packId, JSON.stringify(drawings)],
  );
}

/**
 * The pack's questions as they are here. The hash leaves out the day of the last check, so that a check that found nothing needs no
 * new revision.
 */
export async function knownQuestions(sql: PoolClient | Pool, packId: number, questions: QuestionToWrite[]): Promise<KnownQuestion[]> {
  const { rows } = await sql.query<KnownQuestion>(
    `SELECT q.code, q.kind, q.current_revision AS "currentRevision", q.retired, r.content_hash AS hash
     FROM question q LEFT JOIN jsonb_to_recordset($2) AS n(code text, revision int) ON n.code = q.code
       LEFT JOIN question_revision r ON r.question_id = q.id AND r.revision = n.revision
     WHERE q.pack_id = $1 ORDER BY q.code`,
    [packId, JSON.stringify(questions.map(({ code, revision }) => ({ code, revision })))],
  );
  return rows;
}

/** What people remember of these questions counts no more: they ask something else now. The count of answers goes on. */
export async function forgetMemories(sql: PoolClient, packId: number, codes: readonly string[]): Promise<void> {
  if (codes.length === 0) return;
  await sql.query(
    `UPDATE memory m SET stability = NULL, difficulty = NULL, last_day = NULL, due_day = NULL, retry_day = NULL, surely_wrong = false
     FROM question q WHERE q.id = m.question_id AND q.pack_id = $1 AND q.code = ANY ($2)`,
    [packId, codes],
  );
}

/** @param drawings hashes of the drawings by their codes; they must be there already */
export async function writeQuestions(
  sql: PoolClient,
  packId: number,
  questions: QuestionToWrite[],
  drawings: ReadonlyMap<string, string>,
): Promise<void> {
  const list = JSON.stringify(questions.map((q) => ({ ...q, drawingHash: q.drawing === null ? null : (drawings.get(q.drawing) ?? null) })));
  await sql.query(
    `INSERT INTO question (pack_id, code, kind, objective_id, topic_id, regions, current_revision, retired)
     SELECT $1, n.code, n.kind, o.id, o.topic_id, n.regions, n.revision, false
     FROM jsonb_to_recordset($2) AS n(code text, kind text, objective text, regions text[], revision int)
       JOIN objective o ON o.code = n.objective JOIN topic t ON t.id = o.topic_id AND t.pack_id = $1
     ORDER BY n.code
     ON CONFLICT (pack_id, code) DO UPDATE SET kind = excluded.kind, objective_id = excluded.objective_id, topic_id = excluded.topic_id,
       regions = excluded.regions, current_revision = excluded.current_revision, retired = false`,
    [packId, list],
  );
  await sql.query(
    `INSERT INTO question_revision (question_id, revision, body, content_hash, drawing_id)
     SELECT q.id, n.revision, n.body, n.hash, d.id
     FROM jsonb_to_recordset($2) AS n(code text, revision int, body jsonb, hash text, drawing text, "drawingHash" text)
       JOIN question q ON q.pack_id = $1 AND q.code = n.code
       LEFT JOIN drawing d ON d.pack_id = $1 AND d.code = n.drawing AND d.content_hash = n."drawingHash"
     ON CONFLICT (question_id, revision) DO UPDATE SET body = excluded.body, drawing_id = excluded.drawing_id`,
    [packId, list],
  );
  await sql.query('UPDATE question SET retired = true WHERE pack_id = $1 AND NOT retired AND code <> ALL ($2)', [
    packId,
    questions.map((question) => question.code),
  ]);
}
