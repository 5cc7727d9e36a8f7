import type { PoolClient } from 'pg';
import type { Db } from '../platform/db.js';

/** Queries that remove a person. Most of what is theirs goes with the person's own row, by the foreign keys. */

type Sql = Pick<PoolClient, 'query'>;

export interface Removed {
  id: number;
  mark: string;
  name: string;
  role: string;
}

/** Holds the person until the transaction ends. @returns null for somebody who is not there */
export async function holdPerson(sql: Sql, personId: number): Promise<Removed | null> {
  const { rows } = await sql.query<Removed>('SELECT id, mark, display_name AS name, role FROM person WHERE id = $1 FOR UPDATE', [personId]);
  return rows[0] ?? null;
}

/** Classes that a candidate is in, or whose papers they sat. */
export async function classesOf(sql: Sql, personId: number): Promise<number[]> {
  const { rows } = await sql.query<{ id: number }>(
    `SELECT class_id AS id FROM class_member WHERE person_id = $1
     UNION SELECT pa.class_id FROM sitting s JOIN paper pa ON pa.id = s.paper_id WHERE s.person_id = $1 AND pa.class_id IS NOT NULL`,
    [personId],
  );
  return rows.map(({ id }) => id);
}

/** Papers of one's own, which would otherwise stay without a maker. */
export async function deleteOwnPapers(sql: Sql, personId: number): Promise<void> {
  await sql.query('DELETE FROM paper WHERE made_by = $1 AND class_id IS NULL', [personId]);
}

/** What stands in place of the name of a member of staff who was removed. */
const gone = 'a tutor who is no longer here';

/** Signatures of a member of staff stay with the candidates whose skills they are, without the name. Their withdrawals hold the name alone. */
export async function takeNameOffSignatures(sql: Sql, personId: number, name: string): Promise<void> {
  await sql.query(
    `WITH names AS (SELECT signer_name AS name FROM sign_off WHERE signed_by = $1 UNION SELECT $2)
     UPDATE sign_off SET withdrawn_by = $3 WHERE withdrawn_by IN (SELECT name FROM names)`,
    [personId, name, gone],
  );
  await sql.query('UPDATE sign_off SET signer_name = $2 WHERE signed_by = $1', [personId, gone]);
}

export async function deletePerson(sql: Sql, personId: number): Promise<void> {
  await sql.query('DELETE FROM person WHERE id = $1', [personId]);
}

export async function addMark(sql: Sql, mark: string, why: 'self' | 'staff' | 'time', now: Date): Promise<void> {
  await sql.query('INSERT INTO removed_person (mark, removed_at, why) VALUES ($1, $2, $3) ON CONFLICT DO NOTHING', [mark, now, why]);
}

/** All administrators, held until the transaction ends, in one order. */
export async function holdAdministrators(sql: Sql): Promise<{ id: number; open: boolean }[]> {
  const { rows } = await sql.query<{ id: number; open: boolean }>(
    `SELECT id, closed_at IS NULL AND password_hash IS NOT NULL AS open FROM person WHERE role = 'administrator' ORDER BY id FOR UPDATE`,
  );
  return rows;
}

export interface MarkRow {
  mark: string;
  /** 2026-11-26 */
  day: string;
}

/** Marks of everybody who was removed, the earliest first. */
export async function allMarks(db: Db): Promise<MarkRow[]> {
  const { rows } = await db.pool.query<MarkRow>(
    `SELECT mark, to_char(removed_at, 'YYYY-MM-DD') AS day FROM removed_person ORDER BY removed_at, mark`,
  );
  return rows;
}

export interface FoundPerson {
  id: number;
  name: string;
  role: string;
  createdAt: Date;
  lastSeenAt: Date | null;
  classes: string[];
  tutorOf: string[];
  answers: number;
}

const found = `p.id, p.display_name AS name, p.role, p.created_at AS "createdAt", p.last_seen_at AS "lastSeenAt",
  ARRAY(SELECT c.name FROM class_member m JOIN study_class c ON c.id = m.class_id WHERE m.person_id = p.id ORDER BY c.id) AS classes,
  ARRAY(SELECT c.name FROM class_tutor t JOIN study_class c ON c.id = t.class_id WHERE t.person_id = p.id ORDER BY c.id) AS "tutorOf"`;

export async function findPerson(db: Db, personId: number): Promise<FoundPerson | null> {
  const { rows } = await db.pool.query<FoundPerson>(
    `SELECT ${found}, (SELECT count(*)::int FROM answer a WHERE a.person_id = p.id) AS answers FROM person p WHERE p.id = $1`,
    [personId],
  );
  return rows[0] ?? null;
}

/** People whose name holds a text, by name. @param like the text as LIKE takes it */
export async function findPeople(db: Db, like: string, most: number): Promise<FoundPerson[]> {
  const { rows } = await db.pool.query<FoundPerson>(
    `SELECT ${found}, 0 AS answers FROM person p WHERE p.display_name ILIKE $1 ORDER BY lower(p.display_name), p.id LIMIT $2`,
    [like, most],
  );
  return rows;
}
