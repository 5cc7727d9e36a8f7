import { anywhere } from '../core/words.js';
import type { Db } from '../platform/db.js';

/** Queries over the bank as tutors and editors look through it. */

export interface BankFilter {
  topicId: number | null;
  objectiveId: number | null;
  kind: string | null;
  /** Its words must all stand somewhere in the question, in any form ("fuse" finds "fuses"); or it is part of a code. */
  text: string;
  retired: boolean;
  offset: number;
  limit: number;
}

export interface BankEntry {
  questionId: number;
  code: string;
  kind: string;
  retired: boolean;
  stem: string;
  /** Whether the words stand in the stem itself or the code; true when none are looked for. */
  inStem: boolean;
  drawing: boolean;
  regions: string[];
  objectiveId: number;
  objective: string;
  objectiveTitle: string;
  packTitle: string;
  openQueries: number;
  /** How many the filter finds in all. */
  total: number;
}

export async function findEntries(db: Db, filter: BankFilter): Promise<BankEntry[]> {
  const { rows } = await db.pool.query<BankEntry>(
    `SELECT q.id AS "questionId", q.code, q.kind, q.retired, coalesce(r.body->>'stem', r.body->>'title', '') AS stem, q.regions, r.drawing_id IS NOT NULL AS drawing,
       ($5 = '' OR q.code ILIKE $8 OR to_tsvector('english', coalesce(r.body->>'stem', r.body->>'title', '')) @@ websearch_to_tsquery('english', $5)) AS "inStem",
       o.id AS "objectiveId", o.code AS objective, o.title AS "objectiveTitle", p.title AS "packTitle",
       (SELECT count(*)::int FROM query x WHERE x.question_id = q.id AND x.answer IS NULL) AS "openQueries",
       count(*) OVER ()::int AS total
     FROM question q JOIN question_revision r ON r.question_id = q.id AND r.revision = q.current_revision
       JOIN objective o ON o.id = q.objective_id JOIN topic t ON t.id = q.topic_id JOIN pack p ON p.id = q.pack_id
     WHERE ($1::int IS NULL OR q.topic_id = $1) AND ($2::int IS NULL OR q.objective_id = $2) AND ($3::text IS NULL OR q.kind = $3)
       AND (q.retired = $4)
       AND ($5 = '' OR q.code ILIKE $8 OR jsonb_to_tsvector('english', r.body, '["string"]') @@ websearch_to_tsquery('english', $5))
     ORDER BY p.title, p.id, t.position, o.position, q.kind = 'numeric', q.code LIMIT $6 OFFSET $7`,
    [filter.topicId, filter.objectiveId, filter.kind, filter.retired, filter.text, filter.limit, filter.offset, anywhere(filter.text)],
  );
  return rows;
}

export interface ObjectiveEntry {
  objectiveId: number;
  objective: string;
  objectiveTitle: string;
  topicId: number;
  topic: string;
  topicTitle: string;
  packTitle: string;
  questions: number;
}

/** Every objective, in the order of the syllabus. */
export async function listObjectives(db: Db): Promise<ObjectiveEntry[]> {
  const { rows } = await db.pool.query<ObjectiveEntry>(
    `SELECT o.id AS "objectiveId", o.code AS objective, o.title AS "objectiveTitle", t.id AS "topicId", t.code AS topic,
       t.title AS "topicTitle", p.title AS "packTitle", count(q.id)::int AS questions
     FROM objective o JOIN topic t ON t.id = o.topic_id JOIN pack p ON p.id = t.pack_id
       LEFT JOIN question q ON q.objective_id = o.id AND NOT q.retired
     GROUP BY o.id, t.id, p.id ORDER BY p.title, p.id, t.position, o.position`,
  );
  return rows;
}

export interface QuestionHead {
  currentRevision: number;
  retired: boolean;
  regions: string[];
  demand: string;
}

export async function findHead(db: Db, questionId: number): Promise<QuestionHead | null> {
  const { rows } = await db.pool.query<QuestionHead>(
    `SELECT q.current_revision AS "currentRevision", q.retired, q.regions, coalesce(r.body->>'demand', '') AS demand
     FROM question q JOIN question_revision r ON r.question_id = q.id AND r.revision = q.current_revision WHERE q.id = $1`,
    [questionId],
  );
  return rows[0] ?? null;
}

export interface RevisionEntry {
  revision: number;
  loadedAt: Date;
  checked: string;
  /** The earliest revision that is the same question; null where it began afresh. */
  sameSince: number | null;
}

export async function listRevisions(db: Db, questionId: number): Promise<RevisionEntry[]> {
  const { rows } = await db.pool.query<RevisionEntry>(
    `SELECT revision, loaded_at AS "loadedAt", coalesce(body->>'checked', '') AS checked, (body->>'sameSince')::int AS "sameSince"
     FROM question_revision WHERE question_id = $1 ORDER BY revision DESC`,
    [questionId],
  );
  return rows;
}
