import type { PoolClient } from 'pg';
import type { QuestionState } from '../core/evenings/steps.js';
import type { Region } from '../core/syllabus.js';
import type { Db } from '../platform/db.js';

/** Queries of the steps that a tutor takes through an evening. */

export interface LockedEvening {
  region: Region;
  place: number;
  ended: boolean;
  states: QuestionState[];
}

/** The evening, held until the transaction ends: of two who press at once the second waits, and finds the step taken. */
export async function lockEvening(sql: PoolClient, eveningId: string): Promise<LockedEvening | null> {
  const { rows } = await sql.query<LockedEvening>(
    `SELECT region, place, ended_at IS NOT NULL AS ended FROM evening WHERE id = $1 FOR UPDATE`,
    [eveningId],
  );
  const [evening] = rows;
  if (evening === undefined) return null;
  // By a statement of its own, which sees what the one before has waited for.
  const items = await sql.query<{ state: QuestionState }>('SELECT state FROM evening_item WHERE evening_id = $1 ORDER BY position', [
    eveningId,
  ]);
  return { ...evening, states: items.rows.map(({ state }) => state) };
}

/** Writes where the evening stands, and that something changed. */
export async function writeStep(
  sql: PoolClient,
  eveningId: string,
  step: { place: number; endedAt: Date | null; now: Date; item: { position: number; state: QuestionState } | null },
): Promise<void> {
  await sql.query('UPDATE evening SET place = $2, ended_at = $3, moved_at = $4, change = change + 1 WHERE id = $1', [
    eveningId,
    step.place,
    step.endedAt,
    step.now,
  ]);
  if (step.item === null) return;
  await sql.query('UPDATE evening_item SET state = $3 WHERE evening_id = $1 AND position = $2', [
    eveningId,
    step.item.position,
    step.item.state,
  ]);
}

/** @returns false when the evening is over, or another question is before the class */
export async function writeHands(db: Db, eveningId: string, position: number, hands: readonly number[], now: Date): Promise<boolean> {
  const { rowCount } = await db.pool.query(
    `WITH moved AS (
       UPDATE evening SET change = change + 1, moved_at = $4 WHERE id = $1 AND ended_at IS NULL AND place = $2 RETURNING id
     )
     UPDATE evening_item i SET hands = $3 FROM moved WHERE i.evening_id = moved.id AND i.position = $2`,
    [eveningId, position, hands, now],
  );
  return rowCount === 1;
}

/** Evenings that run and in which no step was taken since then. */
export async function forgottenEvenings(db: Db, before: Date, most: number): Promise<{ eveningId: string; region: Region }[]> {
  const { rows } = await db.pool.query<{ eveningId: string; region: Region }>(
    `SELECT id AS "eveningId", region FROM evening WHERE ended_at IS NULL AND place > 0 AND moved_at < $1 ORDER BY moved_at LIMIT $2`,
    [before, most],
  );
  return rows;
}
