import type { PoolClient } from 'pg';
import type { Db } from '../platform/db.js';

/** Queries about members who were not here for so long that they will be removed. */

export interface LeavingMember {
  personId: number;
  name: string;
  /** 2026-11-26 */
  removeOn: string;
}

export async function leavingOf(db: Db, classId: number): Promise<LeavingMember[]> {
  const { rows } = await db.pool.query<LeavingMember>(
    `SELECT p.id AS "personId", p.display_name AS name, to_char(n.remove_on, 'YYYY-MM-DD') AS "removeOn"
     FROM class_member m JOIN removal_notice n ON n.person_id = m.person_id JOIN person p ON p.id = m.person_id
     WHERE m.class_id = $1 ORDER BY n.remove_on, lower(p.display_name), p.id`,
    [classId],
  );
  return rows;
}

/** Keeps a candidate for a year more, and takes the notice back. Twice is once. @param classId where they must be a member; null for anywhere */
export async function keepLonger(
  db: { pool: Pick<PoolClient, 'query'> },
  personId: number,
  now: Date,
  classId: number | null = null,
): Promise<void> {
  await db.pool.query(
    `WITH kept AS (UPDATE person SET keep_until = ($2::timestamptz AT TIME ZONE 'UTC')::date + 365 WHERE id = $1 AND role = 'candidate'
       AND ($3::int IS NULL OR EXISTS (SELECT FROM class_member WHERE class_id = $3 AND person_id = $1)) RETURNING id)
     DELETE FROM removal_notice WHERE person_id IN (SELECT id FROM kept)`,
    [personId, now, classId],
  );
}
