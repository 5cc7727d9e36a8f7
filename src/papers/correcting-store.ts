import type { PoolClient } from 'pg';
import type { Db } from '../platform/db.js';
import type { MarkedAnswer } from './hand-in-store.js';

/** Queries of marking again. */

export async function handedInOf(db: Db, paperId: string): Promise<{ sittingId: string; version: number }[]> {
  const { rows } = await db.pool.query<{ sittingId: string; version: number }>(
    'SELECT id AS "sittingId", version FROM sitting WHERE paper_id = $1 AND handed_in_at IS NOT NULL',
    [paperId],
  );
  return rows;
}

/** Whether any question of a paper has another revision by now. */
export async function asksOlder(db: Db, paperId: string): Promise<boolean> {
  const { rows } = await db.pool.query<{ older: boolean }>({
    name: 'paper-asks-older',
    text: `SELECT EXISTS (SELECT FROM paper_item i JOIN question q ON q.id = i.question_id
           WHERE i.paper_id = $1 AND q.current_revision <> i.revision) AS older`,
    values: [paperId],
  });
  return rows[0]?.older === true;
}

/** The first mark stays on record beside the new one. */
export async function correctSitting(
  sql: PoolClient,
  sittingId: string,
  done: { right: number; passed: boolean; at: Date; moved: readonly MarkedAnswer[] },
): Promise<void> {
  await sql.query(
    'UPDATE sitting SET first_right = coalesce(first_right, "right"), "right" = $2, passed = $3, remarked_at = $4 WHERE id = $1',
    [sittingId, done.right, done.passed, done.at],
  );
  await sql.query(
    `UPDATE sitting_answer a SET first_right = coalesce(a.first_right, a."right"), "right" = g."right"
     FROM jsonb_to_recordset($2) AS g(position int, "right" boolean) WHERE a.sitting_id = $1 AND a.position = g.position`,
    [sittingId, JSON.stringify(done.moved)],
  );
}
