import type { Region } from '../core/syllabus.js';
import type { Db } from '../platform/db.js';

/** Queries about questions: what somebody thinks is wrong, and what a tutor answered. */

export interface QueryRow {
  id: string;
  questionId: number;
  revision: number;
  seed: number | null;
  region: Region | null;
  kind: string;
  code: string;
  objective: string;
  objectiveTitle: string;
  body: string;
  personId: number;
  byName: string;
  raisedAt: Date;
  answer: string | null;
  answeredAt: Date | null;
  answeredByName: string | null;
  seenAt: Date | null;
}

const select = `SELECT y.id, y.question_id AS "questionId", y.revision, y.seed, y.region, q.kind, q.code, o.code AS objective, o.title AS "objectiveTitle", y.body,
    y.person_id AS "personId", p.display_name AS "byName", y.raised_at AS "raisedAt", y.answer, y.answered_at AS "answeredAt",
    a.display_name AS "answeredByName", y.seen_at AS "seenAt"
  FROM query y JOIN question q ON q.id = y.question_id JOIN objective o ON o.id = q.objective_id JOIN person p ON p.id = y.person_id
    LEFT JOIN person a ON a.id = y.answered_by`;

export interface NewQuery {
  id: string;
  questionId: number;
  revision: number;
  seed: number | null;
  region: Region | null;
  personId: number;
  body: string;
  now: Date;
  most: number;
}

/** Sent twice with the same id, it is there once. Of `most` that wait from one person, no further one is taken: then false. */
export async function addQuery(db: Db, query: NewQuery): Promise<boolean> {
  const { rows } = await db.pool.query<{ there: boolean }>(
    `WITH added AS (
       INSERT INTO query (id, question_id, revision, person_id, body, raised_at, seed, region)
       SELECT $1::uuid, $2, $3, $4, $5, $6, $8, $9 WHERE (SELECT count(*) FROM query WHERE person_id = $4 AND answer IS NULL) < $7
       ON CONFLICT (id) DO NOTHING RETURNING id)
     SELECT EXISTS (SELECT FROM added) OR EXISTS (SELECT FROM query WHERE id = $1 AND person_id = $4) AS there`,
    [query.id, query.questionId, query.revision, query.personId, query.body, query.now, query.most, query.seed, query.region],
  );
  return rows[0]?.there === true;
}

/** Those that wait first, the oldest first; then the answered ones, the latest first. */
export async function listQueries(db: Db, by: { personId?: number; questionId?: number; limit: number }): Promise<QueryRow[]> {
  const { rows } = await db.pool.query<QueryRow>(
    `${select} WHERE ($1::int IS NULL OR y.person_id = $1) AND ($2::int IS NULL OR y.question_id = $2)
     ORDER BY y.answer IS NOT NULL, CASE WHEN y.answer IS NULL THEN y.raised_at END, y.answered_at DESC LIMIT $3`,
    [by.personId ?? null, by.questionId ?? null, by.limit],
  );
  return rows;
}

export async function findQuery(db: Db, id: string): Promise<QueryRow | null> {
  const { rows } = await db.pool.query<QueryRow>(`${select} WHERE y.id = $1`, [id]);
  return rows[0] ?? null;
}

/** Answers, or changes the answer, unless somebody else did meanwhile: then false. A changed answer is unseen again. */
export async function answerQuery(
  db: Db,
  answer: { id: string; personId: number; text: string; now: Date; before: Date | null },
): Promise<boolean> {
  const { rowCount } = await db.pool.query(
    `UPDATE query SET answer = $2, answered_by = $3, answered_at = $4, seen_at = NULL
     WHERE id = $1 AND (answered_at IS NOT DISTINCT FROM $5 OR answer = $2)`,
    [answer.id, answer.text, answer.personId, answer.now, answer.before],
  );
  return rowCount === 1;
}

export async function setSeen(db: Db, id: string, now: Date): Promise<void> {
  await db.pool.query('UPDATE query SET seen_at = $2 WHERE id = $1 AND answer IS NOT NULL AND seen_at IS NULL', [id, now]);
}

/** How many wait for an answer; and how many answers somebody has not seen yet. */
export interface QueryCounts {
  waiting: number;
  /** Of these, the person's own. */
  own: number;
  /** Answers to the person's own that were not looked at yet. */
  unseen: number;
}

export async function countQueries(db: Db, personId: number): Promise<QueryCounts> {
  const { rows } = await db.pool.query<QueryCounts>(
    `SELECT count(*) FILTER (WHERE answer IS NULL)::int AS waiting,
       count(*) FILTER (WHERE person_id = $1 AND answer IS NULL)::int AS own,
       count(*) FILTER (WHERE person_id = $1 AND answer IS NOT NULL AND seen_at IS NULL)::int AS unseen FROM query`,
    [personId],
  );
  return rows[0] as QueryCounts;
}
