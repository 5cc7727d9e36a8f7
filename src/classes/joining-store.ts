import type { PoolClient } from 'pg';
import type { Db } from '../platform/db.js';

/** Queries about joining a class by its code. A code whose time is over, or whose class has ended, is no code. */

const open = `c.join_code = $1 AND c.join_until > $2 AND c.ended_at IS NULL`;

export interface OpenClass {
  classId: number;
  name: string;
  meetsOn: number | null;
  meetsAt: string | null;
  examOn: string | null;
  /** Display names. */
  tutors: string[];
}

export async function findOpenClass(db: Db, code: string, now: Date): Promise<OpenClass | null> {
  const { rows } = await db.pool.query<OpenClass>(
    `SELECT c.id AS "classId", c.name, c.meets_on AS "meetsOn", c.meets_at AS "meetsAt", to_char(c.exam_on, 'YYYY-MM-DD') AS "examOn",
       ARRAY(SELECT p.display_name FROM class_tutor t JOIN person p ON p.id = t.person_id WHERE t.class_id = c.id ORDER BY p.display_name) AS tutors
     FROM study_class c WHERE ${open}`,
    [code, now],
  );
  return rows[0] ?? null;
}

/** @returns whether somebody is in the class now who was not before; null when the code opens none (any more) */
export async function joinByCode(sql: Pick<PoolClient, 'query'>, code: string, personId: number, now: Date): Promise<boolean | null> {
  const { rows } = await sql.query<{ found: boolean; joined: boolean }>(
    `WITH found AS (SELECT c.id FROM study_class c WHERE ${open}),
     joined AS (INSERT INTO class_member (class_id, person_id, joined_at) SELECT id, $3, $2 FROM found ON CONFLICT DO NOTHING RETURNING class_id)
     SELECT EXISTS (SELECT FROM found) AS found, EXISTS (SELECT FROM joined) AS joined`,
    [code, now, personId],
  );
  return rows[0]?.found === true ? rows[0].joined : null;
}

/** Whether a candidate is in this class. */
export async function isMember(db: Db, classId: number, personId: number): Promise<boolean> {
  const { rowCount } = await db.pool.query('SELECT FROM class_member WHERE class_id = $1 AND person_id = $2', [classId, personId]);
  return rowCount === 1;
}
