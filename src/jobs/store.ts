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

/** @returns `mine` for the one server that is to run it now, `done` when there is nothing more to do for this slot */
export async function claimRun(db: Db, { job, slot, server, now, retrySeconds }: Claim): Promise<'mine' | 'done' | 'taken'> {
  const { rowCount } = await db.pool.query({
    name: 'job-claim',
    text: `INSERT INTO job_run AS r (job, slot, started_at, beat_at, server) VALUES ($1, $2, $3, $3, $4)
           ON CONFLICT (job, slot) DO UPDATE SET started_at = $3, beat_at = $3, finished_at = NULL, outcome = NULL, note = '', server = $4
           WHERE (r.finished_at IS NULL AND r.beat_at < $5) OR (r.outcome = 'failed' AND r.finished_at < $6)`,
    values: [job, slot, now, server, new Date(now.getTime() - deadSeconds * 1000), new Date(now.getTime() - retrySeconds * 1000)],
  });
  if (rowCount === 1) return 'mine';
  const { rows } = await db.pool.query<{ done: boolean }>(`SELECT outcome = 'done' AS done FROM job_run WHERE job = $1 AND slot = $2`, [
    job,
    slot,
  ]);
  return rows[0]?.done === true ? 'done' : 'taken';
}

/** A sign of life; it finds nothing when another server took the run over. */
export async function beat(db: Db, { job, slot, server }: Pick<Claim, 'job' | 'slot' | 'server'>, now: Date): Promise<void> {
  await db.pool.query('UPDATE job_run SET beat_at = $4 WHERE job = $1 AND slot = $2 AND server = $3 AND finished_at IS NULL', [
    job,
    slot,
    server,
    now,
  ]);
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
