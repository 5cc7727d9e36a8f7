import type { PoolClient } from 'pg';
import type { Role } from '../core/permissions.js';
import type { Db } from '../platform/db.js';

/** The list of what staff changed. It is only added to: the database refuses everything else. It holds numbers and no names. */

export interface StaffChange {
  /** Null for a command or a job. */
  personId: number | null;
  role: Exclude<Role, 'candidate'> | 'command' | 'job';
  /** What was done, as the end of a sentence that begins with who: `invites a member of staff`. */
  what: string;
  /** Numbers of what it is about, such as `{ class: 3, person: 12 }`. */
  about: Record<string, number | string>;
}

export async function recordChange(sql: Pick<PoolClient, 'query'>, now: Date, change: StaffChange): Promise<void> {
  await sql.query('INSERT INTO staff_change (at, person_id, role, what, about) VALUES ($1, $2, $3, $4, $5)', [
    now,
    change.personId,
    change.role,
    change.what,
    JSON.stringify(change.about),
  ]);
}

export interface ChangeRow extends StaffChange {
  id: number;
  at: Date;
  /** Null when whoever did it has gone. */
  name: string | null;
}

/** The latest first. @param before only those with a smaller number */
export async function listChanges(db: Db, before: number, most: number): Promise<ChangeRow[]> {
  const { rows } = await db.pool.query<ChangeRow>(
    `SELECT c.id, c.at, c.person_id AS "personId", c.role, c.what, c.about, p.display_name AS name
     FROM staff_change c LEFT JOIN person p ON p.id = c.person_id WHERE c.id < $1 ORDER BY c.id DESC LIMIT $2`,
    [before, most],
  );
  return rows;
}
