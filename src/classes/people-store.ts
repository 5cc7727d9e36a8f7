import type { PoolClient } from 'pg';
import type { Db } from '../platform/db.js';

/** Queries that make and change a class, and who teaches it. */

type Sql = Pick<PoolClient, 'query'>;

export interface ClassFields {
  name: string;
  /** 2026-12-08 */
  examOn: string | null;
  paper: string | null;
  meetsOn: number | null;
  meetsAt: string | null;
  timeZone: string;
}

const valuesOf = (fields: ClassFields) => [fields.name, fields.examOn, fields.paper, fields.meetsOn, fields.meetsAt, fields.timeZone];

/** A class whose maker is its tutor. @returns its id, the same one when this form was sent before */
export async function addClass(db: Db, fields: ClassFields, by: number, startToken: string, now: Date): Promise<number | null> {
  await db.pool.query(
    `WITH made AS (
       INSERT INTO study_class (name, exam_on, paper, meets_on, meets_at, time_zone, start_token, created_at)
       VALUES ($1, $2, $3, $4, $5, $6, $8, $9) ON CONFLICT (start_token) DO NOTHING RETURNING id
     ) INSERT INTO class_tutor (class_id, person_id) SELECT id, $7 FROM made`,
    [...valuesOf(fields), by, startToken, now],
  );
  const { rows } = await db.pool.query<{ id: number }>(
    'SELECT c.id FROM study_class c JOIN class_tutor t ON t.class_id = c.id AND t.person_id = $2 WHERE c.start_token = $1',
    [startToken, by],
  );
  return rows[0]?.id ?? null;
}

export async function saveClass(db: Db, classId: number, fields: ClassFields): Promise<void> {
  await db.pool.query(
    'UPDATE study_class SET name = $1, exam_on = $2, paper = $3, meets_on = $4, meets_at = $5, time_zone = $6 WHERE id = $7',
    [...valuesOf(fields), classId],
  );
}

/** Over, with its joining code; a second time changes nothing. */
export async function endClass(db: Db, classId: number, now: Date): Promise<void> {
  await db.pool.query('UPDATE study_class SET ended_at = $2, join_code = NULL, join_until = NULL WHERE id = $1 AND ended_at IS NULL', [
    classId,
    now,
  ]);
}

export async function takeUpClass(db: Db, classId: number): Promise<void> {
  await db.pool.query('UPDATE study_class SET ended_at = NULL WHERE id = $1', [classId]);
}

export interface StaffRow {
  personId: number;
  name: string;
  role: string;
}

const staffColumns = 'p.id AS "personId", p.display_name AS name, p.role';

export async function tutorsOf(db: Db, classId: number): Promise<StaffRow[]> {
  const { rows } = await db.pool.query<StaffRow>(
    `SELECT ${staffColumns} FROM class_tutor t JOIN person p ON p.id = t.person_id WHERE t.class_id = $1 ORDER BY lower(p.display_name), p.id`,
    [classId],
  );
  return rows;
}

/** Who teaches or runs the server and is no tutor of this class. */
export async function otherStaff(db: Db, classId: number): Promise<StaffRow[]> {
  const { rows } = await db.pool.query<StaffRow>(
    `SELECT ${staffColumns} FROM person p WHERE p.role <> 'candidate'
       AND NOT EXISTS (SELECT FROM class_tutor t WHERE t.class_id = $1 AND t.person_id = p.id)
     ORDER BY lower(p.display_name), p.id LIMIT 200`,
    [classId],
  );
  return rows;
}

/** Somebody who is no candidate becomes tutor; twice is once. */
export async function addTutor(db: Db, classId: number, personId: number): Promise<void> {
  await db.pool.query(
    `INSERT INTO class_tutor (class_id, person_id) SELECT $1, id FROM person WHERE id = $2 AND role <> 'candidate' ON CONFLICT DO NOTHING`,
    [classId, personId],
  );
}

/** @returns false for the last tutor, who stays. Two who remove one another at once are taken in turn. */
export async function removeTutor(sql: Sql, classId: number, personId: number): Promise<boolean> {
  await sql.query('SELECT FROM study_class WHERE id = $1 FOR UPDATE', [classId]);
  const { rows } = await sql.query<{ left: number }>(
    `WITH gone AS (DELETE FROM class_tutor WHERE class_id = $1 AND person_id = $2 AND (SELECT count(*) FROM class_tutor WHERE class_id = $1) > 1)
     SELECT count(*)::int AS left FROM class_tutor WHERE class_id = $1 AND person_id <> $2`,
    [classId, personId],
  );
  return (rows[0]?.left ?? 0) > 0;
}

/** By which a class can be joined, also when its time is over; null when there is none. */
export async function codeOf(db: Db, classId: number): Promise<{ code: string; until: Date } | null> {
  const { rows } = await db.pool.query<{ code: string; until: Date }>(
    'SELECT join_code AS code, join_until AS until FROM study_class WHERE id = $1 AND join_code IS NOT NULL',
    [classId],
  );
  return rows[0] ?? null;
}

/** The old code is dead with the same statement. An ended class gets none. @throws 23505 when another class has this code */
export async function setCode(db: Db, classId: number, code: string, until: Date): Promise<void> {
  await db.pool.query('UPDATE study_class SET join_code = $2, join_until = $3 WHERE id = $1 AND ended_at IS NULL', [classId, code, until]);
}

export async function keepCode(db: Db, classId: number, until: Date): Promise<void> {
  await db.pool.query('UPDATE study_class SET join_until = $2 WHERE id = $1 AND join_code IS NOT NULL', [classId, until]);
}

export async function closeCode(db: Db, classId: number): Promise<void> {
  await db.pool.query('UPDATE study_class SET join_code = NULL, join_until = NULL WHERE id = $1', [classId]);
}
