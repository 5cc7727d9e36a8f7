import type { Db } from '../platform/db.js';
import { statements } from './columns.js';

/** Reading what is held about somebody, kind by kind and part by part: nobody's record is ever held whole in the server's memory. */

export type HeldKind = keyof typeof statements;
/** Field names of the file; what they hold is plain JSON, and moments. */
export type HeldRow = Readonly<Record<string, unknown>>;

export const heldKinds = Object.keys(statements) as HeldKind[];

/** The statement ends with an order that no two rows share, so that parts fit together. */
export async function readHeld(db: Db, kind: HeldKind, personId: number, offset: number, most: number): Promise<HeldRow[]> {
  const { rows } = await db.pool.query<HeldRow>(`${statements[kind]} LIMIT $2 OFFSET $3`, [personId, most, offset]);
  return rows;
}

/** How many rows there are of each kind. */
export async function countHeld(db: Db, personId: number): Promise<Record<HeldKind, number>> {
  const counts = heldKinds.map((kind) => `(SELECT count(*) FROM (${statements[kind]}) AS held)::int AS ${kind}`);
  const { rows } = await db.pool.query<Record<HeldKind, number>>(`SELECT ${counts.join(', ')}`, [personId]);
  return rows[0] as Record<HeldKind, number>;
}

export interface KeepingRules {
  /** Without a visit, after which a candidate is removed. */
  months: number;
  /** Whom people may ask about what is kept of them; empty until somebody wrote it. */
  contact: string;
}

export async function keepingRules(db: Db): Promise<KeepingRules> {
  const { rows } = await db.pool.query<KeepingRules>('SELECT keep_months AS months, contact FROM installation WHERE id = 1');
  return rows[0] as KeepingRules;
}
