import type { Db } from '../platform/db.js';

/** Who runs which job. The primary key (job, slot) is what makes each slot run once over all servers. */

/** A run without a sign of life for so long is taken over: its server was killed. */
const deadSeconds = 120;

export interface Claim {
  job: string;
  slot: Date;
  server: string;
  now: Date;
  /** A failed run may be tried again after so many seconds. */
  retrySeconds: number;
}

/** @returns true for the one server that is to run it now */
export async function claimRun(db: Db, { job, slot, server, now, retrySeconds }: Claim): Promise<boolean> {
  const { rowCount } = await db.pool.query({
    name: 'job-claim',
    text: `INSERT INTO job_run AS r (job, slot, started_at, beat_at, server) VALUES ($1, $2, $3, $3, $4)
           ON CONFLICT (job, slot) DO UPDATE SET started_at = $3, beat_at = $3, finished_at = NULL, outcome = NULL, note = '', server = $4
           WHERE (r.finished_at IS NULL AND r.beat_at < $5) OR (r.outcome = 'failed' AND r.finished_at < $6)`,
    values: [job, slot, now, server, new Date(now.getTime() - deadSeconds * 1000), new Date(now.getTime() - retrySeconds * 1000)],
  });
  return rowCount === 1;
}

/** @returns false when another server took the run over */
export async function beat(db: Db, { job, slot, server }: Pick<Claim, 'job' | 'slot' | 'server'>, now: Date): Promise<boolean> {
  const { rowCount } = await db.pool.query(
    'UPDATE job_run SET beat_at = $4 WHERE job = $1 AND slot = $2 AND server = $3 AND finished_at IS NULL',
    [job, slot, server, now],
  );
  return rowCount === 1;
}

export async function finishRun(
  db: Db,
  { job, slot, server }: Pick<Claim, 'job' | 'slot' | 'server'>,
  now: Date,
  end: { outcome: 'done' | 'failed'; note: string },
): Promise<void> {
  await db.pool.query(
    `UPDATE job_run SET finished_at = $4, beat_at = $4, outcome = $5, note = $6
     WHERE job = $1 AND slot = $2 AND server = $3 AND finished_at IS NULL`,
    [job, slot, server, now, end.outcome, end.note],
  );
}

/** Frequent jobs leave thousands of lines a day: what was done is forgotten after a day, all else after forty. */
export async function forgetRuns(db: Db, now: Date): Promise<void> {
  await db.pool.query(`DELETE FROM job_run r WHERE (outcome = 'done' AND job IN ('close-overdue', 'tidy') AND slot < $1) OR slot < $2`, [
    new Date(now.getTime() - 86_400_000),
    new Date(now.getTime() - 40 * 86_400_000),
  ]);
}
