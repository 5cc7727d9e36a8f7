import type { PoolClient } from 'pg';
import type { Region } from '../core/syllabus.js';
import type { Db } from '../platform/db.js';

/** Queries about the candidates of a class. Answers and sittings belong to the person and are never touched here. */

type Sql = Pick<PoolClient, 'query'>;

export interface MemberRow {
  personId: number;
  name: string;
  timeZone: string;
  region: Region;
  joinedAt: Date;
  lastSeenAt: Date | null;
  /** When a tutor last made a new return slip, and who; the name is null too where that tutor is no longer here. */
  slipAt: Date | null;
  slipBy: string | null;
}

const memberColumns = `p.id AS "personId", p.display_name AS name, p.time_zone AS "timeZone", p.region, m.joined_at AS "joinedAt", p.last_seen_at AS "lastSeenAt", p.slip_at AS "slipAt",
  (SELECT display_name FROM person t WHERE t.id = p.slip_by) AS "slipBy"`;

export async function membersOf(db: Db, classId: number): Promise<MemberRow[]> {
  const { rows } = await db.pool.query<MemberRow>(
    `SELECT ${memberColumns} FROM class_member m JOIN person p ON p.id = m.person_id WHERE m.class_id = $1 ORDER BY lower(p.display_name), p.id`,
    [classId],
  );
  return rows;
}

export async function findMember(db: Db, classId: number, personId: number): Promise<MemberRow | null> {
  const { rows } = await db.pool.query<MemberRow>(
    `SELECT ${memberColumns} FROM class_member m JOIN person p ON p.id = m.person_id WHERE m.class_id = $1 AND m.person_id = $2`,
    [classId, personId],
  );
  return rows[0] ?? null;
}

/** Whether somebody is in the class, and stays so until the transaction ends. */
export async function holdMember(sql: Sql, classId: number, personId: number): Promise<boolean> {
  const { rowCount } = await sql.query('SELECT FROM class_member WHERE class_id = $1 AND person_id = $2 FOR SHARE', [classId, personId]);
  return rowCount === 1;
}

export async function addMembers(sql: Sql, classId: number, personIds: readonly number[], now: Date): Promise<void> {
  await sql.query('INSERT INTO class_member (class_id, person_id, joined_at) SELECT $1, unnest($2::int[]), $3 ON CONFLICT DO NOTHING', [
    classId,
    personIds,
    now,
  ]);
}

/** Whether a form with one of these tokens has made somebody. */
export async function wasSent(db: Db, tokens: readonly string[]): Promise<boolean> {
  const { rowCount } = await db.pool.query('SELECT FROM person WHERE start_token = ANY ($1::uuid[]) LIMIT 1', [tokens]);
  return rowCount === 1;
}

export async function removeMember(db: Db, classId: number, personId: number): Promise<void> {
  await db.pool.query('DELETE FROM class_member WHERE class_id = $1 AND person_id = $2', [classId, personId]);
}

/** From one class to another, with the extra time on papers; who is in both is then in one. */
export async function moveMember(db: Db, from: number, to: number, personId: number, now: Date): Promise<void> {
  await db.pool.query(
    `WITH gone AS (DELETE FROM class_member WHERE class_id = $1 AND person_id = $3 RETURNING extra_time)
     INSERT INTO class_member (class_id, person_id, extra_time, joined_at) SELECT $2, $3, extra_time, $4 FROM gone ON CONFLICT DO NOTHING`,
    [from, to, personId, now],
  );
}

export interface OwnClass {
  classId: number;
  name: string;
  examOn: string | null;
  meetsOn: number | null;
  meetsAt: string | null;
  /** Display names. */
  tutors: string[];
  joinedAt: Date;
  ended: boolean;
}

/** The classes that a candidate is in, those that run first. */
export async function classesOfMember(db: Db, personId: number): Promise<OwnClass[]> {
  const { rows } = await db.pool.query<OwnClass>(
    `SELECT c.id AS "classId", c.name, to_char(c.exam_on, 'YYYY-MM-DD') AS "examOn", c.meets_on AS "meetsOn", c.meets_at AS "meetsAt",
       ARRAY(SELECT p.display_name FROM class_tutor t JOIN person p ON p.id = t.person_id WHERE t.class_id = c.id ORDER BY p.display_name) AS tutors,
       m.joined_at AS "joinedAt", c.ended_at IS NOT NULL AS ended
     FROM class_member m JOIN study_class c ON c.id = m.class_id WHERE m.person_id = $1 ORDER BY c.ended_at IS NOT NULL, m.joined_at, c.id`,
    [personId],
  );
  return rows;
}
