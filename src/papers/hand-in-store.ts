import type { PoolClient } from 'pg';
import type { Region } from '../core/syllabus.js';
import type { Db } from '../platform/db.js';

/** Queries of handing in. */

export interface MarkedAnswer {
  position: number;
  /** The letter; null for a blank. */
  choice: string | null;
  right: boolean;
  /** Its line in the record of answers; null for a blank, and without an account. */
  token: string | null;
}

/** What a sitting asks, which never changes. */
export async function askedIn(db: Db, sittingId: string): Promise<{ paperId: string; version: number; region: Region } | null> {
  const { rows } = await db.pool.query<{ paperId: string; version: number; region: Region }>(
    'SELECT s.paper_id AS "paperId", s.version, pa.region FROM sitting s JOIN paper pa ON pa.id = s.paper_id WHERE s.id = $1',
    [sittingId],
  );
  return rows[0] ?? null;
}

export interface LockedSitting {
  personId: number | null;
  handedInAt: Date | null;
  region: Region;
  passMark: number;
  /** The candidate's own calendar and exam, for what the memory is told; null without an account. */
  timeZone: string | null;
  examDay: number | null;
}

/** The sitting, held until the transaction ends: of two who hand it in at once the second waits, and finds it done. */
export async function lockSitting(sql: PoolClient, sittingId: string): Promise<LockedSitting | null> {
  const { rows } = await sql.query<LockedSitting>(
    `SELECT s.person_id AS "personId", s.handed_in_at AS "handedInAt", pa.region,
       (pa.blueprint->>'passMark')::int AS "passMark", p.time_zone AS "timeZone", sp.exam_day AS "examDay"
     FROM sitting s JOIN paper pa ON pa.id = s.paper_id LEFT JOIN person p ON p.id = s.person_id LEFT JOIN study_plan sp ON sp.person_id = s.person_id
     WHERE s.id = $1 FOR UPDATE OF s`,
    [sittingId],
  );
  return rows[0] ?? null;
}

export async function finishSitting(
  sql: PoolClient,
  sittingId: string,
  done: { handedInAt: Date; right: number; passed: boolean; answers: readonly MarkedAnswer[] },
): Promise<void> {
  await sql.query('UPDATE sitting SET handed_in_at = $2, "right" = $3, passed = $4 WHERE id = $1', [
    sittingId,
    done.handedInAt,
    done.right,
    done.passed,
  ]);
  await sql.query(
    `UPDATE sitting_answer a SET "right" = g."right", token = g.token
     FROM jsonb_to_recordset($2) AS g(position int, "right" boolean, token uuid) WHERE a.sitting_id = $1 AND a.position = g.position`,
    [sittingId, JSON.stringify(done.answers)],
  );
}
