import type { Db } from '../platform/db.js';
import { lastMigration } from '../platform/migrate.js';

/** Queries of the administrator's pages. */

export interface DatabaseFacts {
  version: string;
  bytes: number;
  since: Date;
  migration: string;
}

export async function databaseFacts(db: Db): Promise<DatabaseFacts> {
  const { rows } = await db.pool.query<Omit<DatabaseFacts, 'migration'>>(
    `SELECT split_part(current_setting('server_version'), ' ', 1) AS version, pg_database_size(current_database()) AS bytes,
       (SELECT created_at FROM installation) AS since`,
  );
  return { ...(rows[0] as Omit<DatabaseFacts, 'migration'>), migration: (await lastMigration(db.pool)) ?? '' };
}

export interface LastRun {
  job: string;
  startedAt: Date;
  finishedAt: Date | null;
  outcome: 'done' | 'failed' | null;
  note: string;
  server: string;
  /** When it was last done, which may be an earlier run. */
  doneAt: Date | null;
}

/** The last run of each job that has run. Frequent jobs have thousands of lines, so each job is looked up by itself. */
export async function lastRuns(db: Db): Promise<LastRun[]> {
  const { rows } = await db.pool.query<LastRun>(
    `SELECT r.job, r.started_at AS "startedAt", r.finished_at AS "finishedAt", r.outcome, r.note, r.server, d.at AS "doneAt"
     FROM (SELECT DISTINCT job FROM job_run) j
       CROSS JOIN LATERAL (SELECT * FROM job_run o WHERE o.job = j.job ORDER BY o.slot DESC LIMIT 1) r
       CROSS JOIN LATERAL (SELECT max(o.finished_at) AS at FROM job_run o WHERE o.job = j.job AND o.outcome = 'done') d
     ORDER BY r.job`,
  );
  return rows;
}

/** A backup that somebody took by hand counts as the job's. */
export async function addBackupRun(db: Db, run: { started: Date; finished: Date; note: string }): Promise<void> {
  await db.pool.query(
    `INSERT INTO job_run (job, slot, started_at, beat_at, finished_at, outcome, note, server) VALUES ('backup', $1, $1, $2, $2, 'done', $3, 'by hand')
     ON CONFLICT (job, slot) DO NOTHING`,
    [run.started, run.finished, run.note],
  );
}

export interface Counts {
  candidates: number;
  /** Of those, who were here in the last seven days. */
  recent: number;
  tutors: number;
  administrators: number;
  classes: number;
  queries: number;
  /** Who will be removed for want of visits, as told. */
  leaving: number;
  answers: number;
}

export async function counts(db: Db, now: Date): Promise<Counts> {
  const { rows } = await db.pool.query<Counts>(
    `SELECT count(*) FILTER (WHERE role = 'candidate')::int AS candidates,
       count(*) FILTER (WHERE role = 'candidate' AND last_seen_at > $1)::int AS recent,
       count(*) FILTER (WHERE role = 'tutor' AND closed_at IS NULL)::int AS tutors,
       count(*) FILTER (WHERE role = 'administrator' AND closed_at IS NULL)::int AS administrators,
       (SELECT count(*)::int FROM study_class WHERE ended_at IS NULL) AS classes,
       (SELECT count(*)::int FROM query WHERE answer IS NULL) AS queries,
       (SELECT count(*)::int FROM removal_notice) AS leaving,
       -- Near enough, and free: counting a million answers for a page would not be.
       (SELECT greatest(reltuples, 0)::float8 FROM pg_class WHERE oid = 'answer'::regclass) AS answers
     FROM person`,
    [new Date(now.getTime() - 7 * 86_400_000)],
  );
  return rows[0] as Counts;
}

export async function anyRemoved(db: Db): Promise<boolean> {
  return (await db.prisma.removedPerson.count()) > 0;
}
