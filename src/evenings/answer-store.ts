import type { PoolClient } from 'pg';
import type { Db } from '../platform/db.js';

/** Queries that write what is chosen on phones. */

export type SaveResult = 'saved' | 'not-open' | 'recorded';

/**
 * Saves a choice in one statement that looks itself whether the question is open and the person in the class. Closing waits for those that
 * are under way, and whoever comes after it finds the question closed.
 * @returns `recorded`: this person's answer was marked when the question closed before, and stays
 */
export async function saveChoice(
  db: Db,
  to: { eveningId: string; position: number; personId: number },
  choice: string,
  now: Date,
): Promise<SaveResult> {
  const { rows } = await db.pool.query<{ open: boolean; saved: boolean }>({
    name: 'evening-choice',
    text: `WITH open AS (
         SELECT i.evening_id, i.position FROM evening_item i JOIN evening e ON e.id = i.evening_id
         WHERE i.evening_id = $1 AND i.position = $2 AND i.state = 'open'
           AND EXISTS (SELECT FROM class_member m WHERE m.class_id = e.class_id AND m.person_id = $3)
         FOR SHARE OF i
       ), saved AS (
         INSERT INTO evening_answer (evening_id, position, person_id, choice, saved_at) SELECT open.evening_id, open.position, $3, $4, $5 FROM open
         ON CONFLICT (evening_id, position, person_id) DO UPDATE SET choice = excluded.choice, saved_at = excluded.saved_at
           WHERE evening_answer."right" IS NULL
         RETURNING person_id
       )
       SELECT EXISTS (SELECT FROM open) AS open, EXISTS (SELECT FROM saved) AS saved`,
    values: [to.eveningId, to.position, to.personId, choice, now],
  });
  const [row] = rows;
  if (row?.saved === true) return 'saved';
  return row?.open === true ? 'recorded' : 'not-open';
}

export interface ToMark {
  personId: number;
  choice: string;
  savedAt: Date;
  /** The candidate's own calendar and exam, for what the memory is told. */
  timeZone: string;
  examDay: number | null;
}

/** Answers to a question that were not marked yet. Its row must be held, so that none is added meanwhile. */
export async function answersToMark(sql: PoolClient, eveningId: string, position: number): Promise<ToMark[]> {
  const { rows } = await sql.query<ToMark>(
    `SELECT a.person_id AS "personId", a.choice, a.saved_at AS "savedAt", p.time_zone AS "timeZone", sp.exam_day AS "examDay"
     FROM evening_answer a JOIN person p ON p.id = a.person_id LEFT JOIN study_plan sp ON sp.person_id = a.person_id
     WHERE a.evening_id = $1 AND a.position = $2 AND a."right" IS NULL ORDER BY a.person_id`,
    [eveningId, position],
  );
  return rows;
}

export async function markAnswers(
  sql: PoolClient,
  eveningId: string,
  position: number,
  marks: readonly { personId: number; right: boolean; token: string | null }[],
): Promise<void> {
  await sql.query(
    `UPDATE evening_answer a SET "right" = g."right", token = g.token
     FROM jsonb_to_recordset($3) AS g("personId" int, "right" boolean, token uuid)
     WHERE a.evening_id = $1 AND a.position = $2 AND a.person_id = g."personId"`,
    [eveningId, position, JSON.stringify(marks)],
  );
}
