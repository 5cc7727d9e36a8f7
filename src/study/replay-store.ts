import type { Rating } from '../core/memory.js';
import type { Db } from '../platform/db.js';

/** Queries for the replay of the record of answers. */

export interface LogRow {
  personId: number;
  questionId: number;
  code: string;
  revision: number;
  day: number;
  rating: Rating | null;
  stabilityBefore: number | null;
  difficultyBefore: number | null;
  lastDayBefore: number | null;
  stabilityAfter: number | null;
  difficultyAfter: number | null;
  /** The memory as it stands now, the same on every row of one question. */
  stability: number | null;
  difficulty: number | null;
  lastDay: number | null;
  currentRevision: number;
}

/** The next people who have answered anything. */
export async function peopleAfter(db: Db, personId: number, most: number): Promise<number[]> {
  const { rows } = await db.pool.query<{ id: number }>(
    'SELECT id FROM person p WHERE id > $1 AND EXISTS (SELECT FROM answer a WHERE a.person_id = p.id) ORDER BY id LIMIT $2',
    [personId, most],
  );
  return rows.map(({ id }) => id);
}

/** Everything that these people answered, by person and question, in the order of the answers. */
export async function logOf(db: Db, people: readonly number[]): Promise<LogRow[]> {
  const { rows } = await db.pool.query<LogRow>(
    `SELECT a.person_id AS "personId", a.question_id AS "questionId", q.code, a.revision, a.day, a.rating,
       a.stability_before AS "stabilityBefore", a.difficulty_before AS "difficultyBefore", a.last_day_before AS "lastDayBefore",
       a.stability_after AS "stabilityAfter", a.difficulty_after AS "difficultyAfter",
       m.stability, m.difficulty, m.last_day AS "lastDay", q.current_revision AS "currentRevision"
     FROM answer a JOIN question q ON q.id = a.question_id LEFT JOIN memory m ON m.person_id = a.person_id AND m.question_id = a.question_id
     WHERE a.person_id = ANY ($1) ORDER BY a.person_id, a.question_id, a.reps_after`,
    [people],
  );
  return rows;
}
