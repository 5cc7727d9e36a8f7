import { setTimeout as wait } from 'node:timers/promises';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import { slotOf, type Every } from './schedule.js';
import { beat, claimRun, finishRun } from './store.js';

/** What is done without anybody asking. Each slot of each job is run by one of all servers on one database. */

export interface Job {
  name: string;
  every: Every;
  /** Does the work and says in a few words what was done: numbers, never names, since it is kept and shown. */
  run: () => Promise<string>;
  /** For the list of jobs, when a run failed: what to do. What went wrong stands in the log. */
  failedNote: string;
}

export interface JobsNeeds {
  db: Db;
  clock: Clock;
  jobs: readonly Job[];
  /** Of the computer the club's hours are read on. */
  timeZone: string;
  /** Random letters of this process. */
  server: string;
  log: { warn(what: object, text: string): void };
}

export interface Jobs {
  /** Looks once which jobs are due and runs them, beside each other. @returns the names of those that this server ran */
  look(): Promise<string[]>;
  /** Ends the looking. A run that is under way may take some seconds to end; what it leaves is taken up by the next. */
  stop(): Promise<void>;
}

const lookMilliseconds = 10_000;
const beatMilliseconds = 30_000;
const stopMilliseconds = 5_000;
const retrySeconds = 3_600;

/** @param looking false: looks only when asked to, for tests */
export function startJobs(needs: JobsNeeds, looking = true): Jobs {
  let stopped = false;
  const done = new Map<string, number>();
  const running = new Map<string, Promise<boolean>>();

  // A long job, such as a backup, keeps no other waiting; and none runs twice at once here.
  async function one(job: Job): Promise<string[]> {
    if (stopped || running.has(job.name)) return [];
    const run = runIfDue(needs, job, done);
    running.set(job.name, run);
    return (await run.finally(() => running.delete(job.name))) ? [job.name] : [];
  }
  const look = async (): Promise<string[]> => (await Promise.all(needs.jobs.map(one))).flat();

  // A database that is away is said once, and not every ten seconds.
  let away = false;
  const lookAgain = (): void => {
    look().then(
      () => (away = false),
      (error: unknown) => {
        if (!away && !stopped) needs.log.warn({ err: error }, 'jobs could not be looked at');
        away = true;
      },
    );
  };
  const timer = looking ? setInterval(lookAgain, lookMilliseconds) : undefined;
  if (looking) lookAgain();
  return {
    look,
    stop: async () => {
      stopped = true;
      clearInterval(timer);
      await Promise.race([Promise.allSettled(running.values()), wait(stopMilliseconds, undefined, { ref: false })]);
    },
  };
}

/** @param done the slot of each job that is known to be taken, which spares the question */
async function runIfDue({ db, clock, server, timeZone, log }: JobsNeeds, job: Job, done: Map<string, number>): Promise<boolean> {
  const now = clock.now();
  const slot = slotOf(job.every, now.getTime(), timeZone);
  if (done.get(job.name) === slot) return false;
  const which = { job: job.name, slot: new Date(slot), server };
  const claimed = await claimRun(db, { ...which, now, retrySeconds });
  if (claimed === 'done') done.set(job.name, slot);
  if (claimed !== 'mine') return false;
  const beating = setInterval(() => void beat(db, which, clock.now()).catch(() => undefined), beatMilliseconds);
  const begun = performance.now();
  const end = await job
    .run()
    .then((note) => ({ outcome: 'done' as const, note }))
    .catch((error: unknown) => {
      log.warn({ err: error, job: job.name }, 'a job failed');
      return { outcome: 'failed' as const, note: job.failedNote };
    })
    .finally(() => clearInterval(beating));
  // Its own end is told by the time it took, for a clock that is moved stands still meanwhile.
  await finishRun(db, which, new Date(now.getTime() + Math.round(performance.now() - begun)), end);
  if (end.outcome === 'done') done.set(job.name, slot);
  return true;
}
