import type { Db } from '../platform/db.js';

/** Queries about what the questions that are asked now say, and what people think is wrong with them. */

export interface OutlineRow {
  questionId: number;
  code: string;
  kind: string;
  /** The present revision, the first that counts as the same question, and when that one came into the bank. */
  revision: number;
  since: number;
  sinceAt: Date;
  stem: string;
  objective: string;
  objectiveTitle: string;
  /** Parts, or values to choose from; 0 where a number is typed. */
  parts: number;
  /** Of each revision that counts. */
  wordings: { revision: number; names: string[]; labels: string[]; keys: boolean[] }[];
}

/** @param questionId null for all; retired ones are asked no more and stay out */
export async function readOutlines(db: Db, questionId: number | null): Promise<OutlineRow[]> {
  const { rows } = await db.pool.query<OutlineRow>(
    `WITH asked AS (
       SELECT q.id, q.code, q.kind, q.objective_id, q.current_revision AS revision, r.body, coalesce((r.body->>'sameSince')::int, q.current_revision) AS since
       FROM question q JOIN question_revision r ON r.question_id = q.id AND r.revision = q.current_revision
       WHERE NOT q.retired AND ($1::int IS NULL OR q.id = $1)
     )
     SELECT a.id AS "questionId", a.code, a.kind, a.revision, a.since, o.code AS objective, o.title AS "objectiveTitle",
       coalesce(a.body->>'stem', a.body->>'title', '') AS stem,
       CASE WHEN a.kind <> 'numeric' THEN jsonb_array_length(coalesce(a.body->'options', a.body->'places', a.body->'statements', a.body->'steps', a.body->'pairs'))
            -- The longest list that is offered whole, so that luck is never made out to be likelier than it is.
            WHEN a.body->'answer'->>'kind' = 'choice' THEN 6 ELSE 0 END AS parts,
       w.wordings, w."sinceAt"
     FROM asked a JOIN objective o ON o.id = a.objective_id, LATERAL (
       SELECT min(r.loaded_at) AS "sinceAt", jsonb_agg(jsonb_build_object('revision', r.revision, 'names', n.names, 'labels', n.labels, 'keys', n.keys) ORDER BY r.revision) AS wordings
       FROM question_revision r, LATERAL (
         SELECT coalesce(jsonb_agg(coalesce(e->>'part', e->>'text', e->>'name') ORDER BY at), '[]') AS names,
           coalesce(jsonb_agg(coalesce(e->>'label', e->>'text') ORDER BY at), '[]') AS labels, coalesce(jsonb_agg(e ? 'key' ORDER BY at), '[]') AS keys
         FROM jsonb_array_elements(coalesce(r.body->'options', r.body->'places', r.body->'tellTales', '[]')) WITH ORDINALITY AS x(e, at)
       ) n WHERE r.question_id = a.id AND r.revision BETWEEN a.since AND a.revision
     ) w ORDER BY a.code`,
    [questionId],
  );
  return rows;
}

export interface QueryLine {
  id: string;
  questionId: number;
  body: string;
  open: boolean;
}

/** Those that wait, or all: those that wait first, then the latest. */
export async function readQueries(db: Db, questionIds: readonly number[], waitingOnly: boolean): Promise<QueryLine[]> {
  const { rows } = await db.pool.query<QueryLine>(
    `SELECT id, question_id AS "questionId", body, answer IS NULL AS open FROM query WHERE question_id = ANY ($1) AND (answer IS NULL OR NOT $2)
     ORDER BY answer IS NOT NULL, raised_at DESC, id`,
    [questionIds, waitingOnly],
  );
  return rows;
}
