import type { CertaintyCount } from '../core/progress/sureness.js';
import type { RecordedCertainty } from '../core/questions/schema.js';
import { anywhere } from '../core/words.js';
import type { Db } from '../platform/db.js';

/** Queries for the progress of a candidate. */

/** By certainty. Where nothing was answered nothing was sure, and a fresh draw comes just after its twin. */
export async function countCertainty(db: Db, personId: number): Promise<CertaintyCount[]> {
  const { rows } = await db.pool.query<CertaintyCount>({
    name: 'progress-certainty',
    text: `SELECT certainty, count(*)::int AS answers, count(*) FILTER (WHERE "right")::int AS "right" FROM answer
           WHERE person_id = $1 AND given <> '' AND certainty <> 'unsaid' AND rating IS NOT NULL GROUP BY certainty`,
    values: [personId],
  });
  return rows;
}

export interface DayRow {
  day: number;
  answers: number;
  seconds: number;
}

/**
 * Time by day, taken from the answers alone: from one to the next, at most three minutes; the first after a break of ten minutes
 * counts as half a minute, since nobody knows when it was begun.
 */
export async function timeByDay(db: Db, personId: number): Promise<DayRow[]> {
  const { rows } = await db.pool.query<DayRow>({
    name: 'progress-time',
    text: `SELECT day, count(*)::int AS answers, sum(CASE WHEN gap IS NULL OR gap > 600 THEN 30 ELSE least(gap, 180) END)::float AS seconds
           FROM (SELECT day, extract(epoch FROM answered_at - lag(answered_at) OVER (ORDER BY answered_at)) AS gap FROM answer WHERE person_id = $1) a
           GROUP BY day ORDER BY day`,
    values: [personId],
  });
  return rows;
}

export type AnswerFilter = 'all' | 'wrong' | 'sure-wrong';

export interface GivenRow {
  token: string;
  day: number;
  code: string;
  stem: string;
  unknown: boolean;
  right: boolean;
  score: number | null;
  certainty: RecordedCertainty;
  /** The sitting or the class evening, and the place in it, for an answer given there. */
  sitting: string | null;
  evening: string | null;
  place: number | null;
  /** How many the filter finds in all. */
  total: number;
}

export async function findAnswers(
  db: Db,
  personId: number,
  { text, show, limit, offset }: { text: string; show: AnswerFilter; limit: number; offset: number },
): Promise<GivenRow[]> {
  const { rows } = await db.pool.query<GivenRow>(
    `SELECT a.token, a.day, q.code, coalesce(r.body->>'stem', r.body->>'title', '') AS stem, a.given = '' AS unknown, a."right", a.score, a.certainty, s.sitting_id AS sitting,
       e.evening_id AS evening, coalesce(s.position, e.position) AS place,
       count(*) OVER ()::int AS total
     FROM answer a JOIN question q ON q.id = a.question_id JOIN question_revision r ON r.question_id = a.question_id AND r.revision = a.revision
       LEFT JOIN sitting_answer s ON s.token = a.token LEFT JOIN evening_answer e ON e.token = a.token
     WHERE a.person_id = $1
       -- What a tutor has not shown yet is not told here either.
       AND NOT EXISTS (SELECT FROM evening_item i JOIN evening v ON v.id = i.evening_id
         WHERE i.evening_id = e.evening_id AND i.position = e.position AND i.state <> 'shown' AND v.ended_at IS NULL)
       AND ($2 = 'all' OR NOT a."right") AND ($2 <> 'sure-wrong' OR (a.certainty = 'sure' AND a.given <> ''))
       AND ($3 = '' OR q.code ILIKE $4 OR jsonb_to_tsvector('english', r.body, '["string"]') @@ websearch_to_tsquery('english', $3))
     ORDER BY a.answered_at DESC, a.token LIMIT $5 OFFSET $6`,
    [personId, show, text, anywhere(text), limit, offset],
  );
  return rows;
}
