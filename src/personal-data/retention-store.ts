import type { PoolClient } from 'pg';
import type { Db } from '../platform/db.js';

/** Queries about how long people are kept. Days are day numbers in UTC. */

type Sql = Pick<PoolClient, 'query'>;

const day = (moment: string): string => `floor(extract(epoch FROM ${moment}) / 86400)::int`;
const dayOfDate = (date: string): string => `(${date} - DATE '1970-01-01')`;

export interface KeptRow {
  id: number;
  visited: number;
  keepUntil: number | null;
  examDay: number | null;
  sitting: boolean;
  given: number | null;
  removeOn: number | null;
}

const kept = `p.id, ${day('coalesce(p.last_seen_at, p.created_at)')} AS visited, ${dayOfDate('p.keep_until')} AS "keepUntil",
  greatest((SELECT exam_day FROM study_plan WHERE person_id = p.id), (SELECT max(${dayOfDate('c.exam_on')}) FROM class_member m
    JOIN study_class c ON c.id = m.class_id WHERE m.person_id = p.id AND c.ended_at IS NULL)) AS "examDay",
  EXISTS (SELECT FROM sitting s WHERE s.person_id = p.id AND s.started_at IS NOT NULL AND s.handed_in_at IS NULL) AS sitting,
  ${day('n.noticed_at')} AS given, ${dayOfDate('n.remove_on')} AS "removeOn"
  FROM person p LEFT JOIN removal_notice n ON n.person_id = p.id WHERE p.role = 'candidate'`;

/** Candidates who were not here since a moment, and whoever has a notice. */
export async function away(db: Db, since: Date): Promise<KeptRow[]> {
  const { rows } = await db.pool.query<KeptRow>(
    `SELECT ${kept} AND (coalesce(p.last_seen_at, p.created_at) < $1 OR n.person_id IS NOT NULL) ORDER BY p.id`,
    [since],
  );
  return rows;
}

/** One of them as they are now, held until the transaction ends. */
export async function holdKept(sql: Sql, personId: number): Promise<KeptRow | null> {
  const { rows } = await sql.query<KeptRow>(`SELECT ${kept} AND p.id = $1 FOR UPDATE OF p`, [personId]);
  return rows[0] ?? null;
}

/** @param removeOn 2026-11-26 */
export async function giveNotice(db: Db, personIds: readonly number[], now: Date, removeOn: string): Promise<void> {
  await db.pool.query(
    `INSERT INTO removal_notice (person_id, noticed_at, remove_on) SELECT id, $2, $3 FROM person WHERE id = ANY ($1)
     ON CONFLICT (person_id) DO UPDATE SET noticed_at = excluded.noticed_at, remove_on = excluded.remove_on`,
    [personIds, now, removeOn],
  );
}

export async function forgetNotices(db: Db, personIds: readonly number[]): Promise<void> {
  await db.pool.query('DELETE FROM removal_notice WHERE person_id = ANY ($1)', [personIds]);
}

export async function saveRules(db: Db, months: number, contact: string): Promise<void> {
  await db.pool.query('UPDATE installation SET keep_months = $1, contact = $2 WHERE id = 1', [months, contact]);
}

export interface LeavingRow {
  id: number;
  name: string;
  lastSeenAt: Date | null;
  /** 2026-11-26 */
  removeOn: string;
  /** Null for somebody in no class. */
  className: string | null;
}

/** Who has a notice, by class; somebody in two classes stands in the first. */
export async function leaving(db: Db): Promise<LeavingRow[]> {
  const { rows } = await db.pool.query<LeavingRow>(
    `SELECT p.id, p.display_name AS name, p.last_seen_at AS "lastSeenAt", to_char(n.remove_on, 'YYYY-MM-DD') AS "removeOn",
       (SELECT c.name FROM class_member m JOIN study_class c ON c.id = m.class_id WHERE m.person_id = p.id ORDER BY c.id LIMIT 1) AS "className"
     FROM removal_notice n JOIN person p ON p.id = n.person_id ORDER BY "className" NULLS LAST, n.remove_on, lower(p.display_name), p.id`,
  );
  return rows;
}

/** Who is kept longer since somebody asked. @param today 2026-11-26 */
export async function keptLonger(db: Db, today: string): Promise<{ name: string; until: string }[]> {
  const { rows } = await db.pool.query<{ name: string; until: string }>(
    `SELECT display_name AS name, to_char(keep_until, 'YYYY-MM-DD') AS until FROM person
     WHERE keep_until >= $1 AND role = 'candidate' ORDER BY keep_until, lower(display_name), id LIMIT 200`,
    [today],
  );
  return rows;
}
