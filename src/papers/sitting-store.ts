import type { PoolClient } from 'pg';
import type { Db } from '../platform/db.js';
import { headColumns, headTables, sittingColumns } from './columns.js';
import type { PaperHead, SheetRow, SittingRow } from './rows.js';

/** Queries about sittings and what stands on their answer sheets. */

export type SittingWithPaper = SittingRow & PaperHead;

const joined = `sitting s JOIN ${headTables.replace('paper pa', 'paper pa ON pa.id = s.paper_id')}`;

export interface NewSitting {
  sittingId: string;
  paperId: string;
  version: number;
  personId: number;
  extraTime: number;
}

/** One sitting of a paper for each candidate: a second call leaves the first as it is. */
export async function addSitting(sql: Pick<PoolClient, 'query'>, sitting: NewSitting): Promise<void> {
  await sql.query(
    `INSERT INTO sitting (id, paper_id, version, person_id, way, extra_time) VALUES ($1, $2, $3, $4, 'screen', $5) ON CONFLICT DO NOTHING`,
    [sitting.sittingId, sitting.paperId, sitting.version, sitting.personId, sitting.extraTime],
  );
}

/** A candidate's own sitting; that of anybody else is not found. */
export async function findSitting(db: Db, personId: number, sittingId: string): Promise<SittingWithPaper | null> {
  const { rows } = await db.pool.query<SittingWithPaper>({
    name: 'sitting-find',
    text: `SELECT ${sittingColumns}, ${headColumns} FROM ${joined} WHERE s.id = $1 AND s.person_id = $2`,
    values: [sittingId, personId],
  });
  return rows[0] ?? null;
}

/** All of a candidate's sittings, the latest first. */
export async function listSittings(db: Db, personId: number): Promise<SittingWithPaper[]> {
  const { rows } = await db.pool.query<SittingWithPaper>(
    `SELECT ${sittingColumns}, ${headColumns} FROM ${joined} WHERE s.person_id = $1 ORDER BY pa.made_at DESC, s.id`,
    [personId],
  );
  return rows;
}

/** What stands on the answer sheet so far. */
export async function sheetOf(sql: Pick<PoolClient, 'query'>, sittingId: string): Promise<SheetRow[]> {
  const { rows } = await sql.query<SheetRow>(
    `SELECT position, choice, again, saved_at AS "savedAt", "right", first_right AS "firstRight" FROM sitting_answer WHERE sitting_id = $1 ORDER BY position`,
    [sittingId],
  );
  return rows;
}

/** Starts the clock, once. */
export async function beginSitting(
  db: Db,
  sittingId: string,
  begun: { startedAt: Date; deadlineAt: Date; chance: { low: number; high: number } | null },
): Promise<void> {
  await db.pool.query(
    'UPDATE sitting SET started_at = $2, deadline_at = $3, chance_low = $4, chance_high = $5 WHERE id = $1 AND started_at IS NULL',
    [sittingId, begun.startedAt, begun.deadlineAt, begun.chance?.low ?? null, begun.chance?.high ?? null],
  );
}

export interface SavedChoice {
  position: number;
  choice: string | null;
  again: boolean;
}

/**
 * Saves choices of a running sitting in one statement that looks at the time itself, so that none slips in after the end.
 * @returns false when the sitting does not run: not begun, over, handed in, or not this person's
 */
export async function saveChoices(
  db: Db,
  personId: number,
  sittingId: string,
  choices: readonly SavedChoice[],
  now: Date,
): Promise<boolean> {
  const { rows } = await db.pool.query<{ runs: boolean }>({
    name: 'sitting-save',
    text: `WITH running AS (
         SELECT id FROM sitting WHERE id = $1 AND person_id = $2 AND handed_in_at IS NULL AND started_at IS NOT NULL AND deadline_at >= $3 FOR SHARE
       ), saved AS (
         INSERT INTO sitting_answer (sitting_id, position, choice, again, saved_at)
         SELECT running.id, c.position, c.choice, c.again, $3 FROM running, jsonb_to_recordset($4) AS c(position int, choice text, again boolean)
         ON CONFLICT (sitting_id, position) DO UPDATE SET choice = excluded.choice, again = excluded.again, saved_at = excluded.saved_at
       )
       SELECT EXISTS (SELECT FROM running) AS runs`,
    values: [sittingId, personId, now, JSON.stringify(choices)],
  });
  return rows[0]?.runs === true;
}

/** Sittings whose time ran out and that nobody has handed in. */
export async function overdueSittings(db: Db, now: Date, most: number): Promise<{ sittingId: string; deadlineAt: Date }[]> {
  const { rows } = await db.pool.query<{ sittingId: string; deadlineAt: Date }>(
    `SELECT id AS "sittingId", deadline_at AS "deadlineAt" FROM sitting
     WHERE deadline_at < $1 AND handed_in_at IS NULL AND started_at IS NOT NULL ORDER BY deadline_at LIMIT $2`,
    [now, most],
  );
  return rows;
}

/** A sitting of a class paper. Versions are dealt out one after the other. */
export async function takeUpSitting(sql: PoolClient, paperId: string, personId: number, extraTime: number): Promise<void> {
  // Held, so that two candidates who come at once are not dealt the same version.
  await sql.query('SELECT FROM paper WHERE id = $1 FOR UPDATE', [paperId]);
  await sql.query(
    `INSERT INTO sitting (id, paper_id, version, person_id, way, extra_time)
     SELECT gen_random_uuid(), pa.id, (SELECT count(*) FROM sitting s WHERE s.paper_id = pa.id)::int % pa.versions + 1, $2, 'screen', $3
     FROM paper pa WHERE pa.id = $1 ON CONFLICT DO NOTHING`,
    [paperId, personId, extraTime],
  );
}

/** A paper whose clock runs; null when none does. */
export async function runningPaper(
  db: Db,
  personId: number,
  now: Date,
): Promise<{ sittingId: string; title: string; deadlineAt: Date } | null> {
  const { rows } = await db.pool.query<{ sittingId: string; title: string; deadlineAt: Date }>({
    name: 'sitting-running',
    text: `SELECT s.id AS "sittingId", pa.title, s.deadline_at AS "deadlineAt" FROM sitting s JOIN paper pa ON pa.id = s.paper_id
           WHERE s.person_id = $1 AND s.handed_in_at IS NULL AND s.started_at IS NOT NULL AND s.deadline_at >= $2 LIMIT 1`,
    values: [personId, now],
  });
  return rows[0] ?? null;
}

/** Papers of one's own that were made and never begun: another one takes their place. */
export async function dropUnbegun(sql: Pick<PoolClient, 'query'>, personId: number, but: string): Promise<void> {
  await sql.query(
    `DELETE FROM paper pa USING sitting s WHERE s.paper_id = pa.id AND pa.class_id IS NULL AND s.person_id = $1 AND s.started_at IS NULL
       AND s.handed_in_at IS NULL AND pa.id <> $2`,
    [personId, but],
  );
}
