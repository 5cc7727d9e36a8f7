import { open, realpath, rename, rm, stat } from 'node:fs/promises';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { SetUpError, explain } from '../set-up-error.js';
import type { Home } from './data-folder.js';
import { lastPort, processState, readPidFile, type PidFile } from './postmaster.js';
import { clusterName, refusal } from './presence.js';
import type { Program } from './program.js';
import { run } from './run.js';

export interface Up<T> {
  port: number;
  /** True when the server was running already. */
  adopted: boolean;
  entered: T;
}

interface Task<T> {
  program: Program;
  home: Home;
  /** Only this port will do: others know the database by it. */
  fixedPort?: number;
  /** Connects to the server on that port; its failure says what the server is about. */
  enter(port: number): Promise<T>;
}

/** A dead server's process may be listed until its parent takes notice; in a container without an init, for ever. */
const zombieWaitMs = 5000;
/** After a power cut the server first repairs itself, which takes as long as it has to redo. */
const recoveryWaitMs = 120_000;

/** @returns the port, if nobody listens there; 0 asks for any free one; undefined when it is taken */
function freePort(port: number): Promise<number | undefined> {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.once('error', () => resolve(undefined));
    probe.listen({ port, host: '127.0.0.1', exclusive: true }, () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === 'object' && address ? address.port : undefined));
    });
  });
}

async function choosePort(task: Task<unknown>): Promise<number> {
  const wanted = task.fixedPort ?? (await lastPort(task.home.cluster));
  const port = (wanted ? await freePort(wanted) : undefined) ?? (task.fixedPort ? undefined : await freePort(0));
  if (port) return port;
  throw new SetUpError(`Port ${wanted} on 127.0.0.1, where the database was, is taken by another program.`, 'Start Rungwise again.');
}

/** Begins a new log when the old one has grown past 5 MB, and returns where the next lines will begin. */
async function readyLog(log: string): Promise<number> {
  const { size } = await stat(log).catch(() => ({ size: 0 }));
  if (size < 5_000_000) return size;
  await rename(log, `${log}.old`);
  return 0;
}

async function logSince(log: string, from: number): Promise<string> {
  const file = await open(log, 'r').catch(() => undefined);
  if (!file) return '';
  try {
    const { buffer, bytesRead } = await file.read({ buffer: Buffer.alloc(20_000), position: from });
    return buffer.toString('utf8', 0, bytesRead);
  } finally {
    await file.close();
  }
}

/** Starts the server once. Returns for reasons that the next look will sort out, throws for those that need a person. */
async function start(task: Task<unknown>): Promise<void> {
  const { home, program } = task;
  const port = await choosePort(task);
  const from = await readyLog(home.log);
  const options = `-p ${port} -c cluster_name=${clusterName}`;
  const args = ['start', '--wait', '--timeout=20', '--silent', '-D', home.cluster, '-l', home.log, '-o', options];
  const { code, output } = await run(program.path('pg_ctl'), args, { cwd: home.folder, account: home.account });
  if (code === 0) return;
  const log = await logSince(home.log, from);
  if (/already exists|still in use|Address already in use|starting up|not yet accepting|did not start in time/.test(log + output)) return;
  const said = (log.match(/(FATAL|PANIC|ERROR): .*$/gm) ?? [output]).slice(-2).join(' ');
  if (/No space left/.test(log))
    throw new SetUpError(`The database cannot start, since its disk is full: ${said}`, 'Make room and start again.');
  throw new SetUpError(`The database did not start: ${said}`, `See ${home.log} for more.`);
}

/** A folder copied or moved while its server ran still names the old place. */
async function refuseForeign({ folder, pid }: PidFile, cluster: string): Promise<void> {
  const named = await realpath(folder).catch(() => folder);
  if (named === cluster) return;
  throw new SetUpError(
    `The database in ${cluster} is a copy of one in ${folder}, whose server (process ${pid}) is still running.`,
    'Stop that server first, then copy the folder again.',
  );
}

/** Enters a server that is there. @returns undefined when it is not ready to let anybody in */
async function tryToEnter<T>(task: Task<T>, { port, pid }: PidFile): Promise<T | undefined> {
  if (!port) return undefined;
  try {
    return await task.enter(port);
  } catch (error) {
    const why = refusal(error);
    if (why === 'not-now') return undefined;
    if (why === 'else') throw error;
    throw new SetUpError(
      `A database server (process ${pid}) runs in ${task.home.cluster}, but refuses Rungwise's password: ${explain(error)}.`,
      'Stop it, put rungwise-access.json back from a backup, or set RUNGWISE_DATA to another folder.',
    );
  }
}

/**
 * Brings the database up: enters the server that runs on our cluster, or else starts one and enters it. Looks again and
 * again until that is done, since another Rungwise may be starting, stopping or repairing it at this very moment;
 * PostgreSQL's own lock on its folder decides who starts it.
 * @throws SetUpError when it cannot be done
 */
export async function bringUp<T>(task: Task<T>): Promise<Up<T>> {
  const { cluster } = task.home;
  const begun = Date.now();
  let starts = 0;
  for (let zombieSince = 0; Date.now() - begun < recoveryWaitMs; await wait(100)) {
    const pidFile = await readPidFile(cluster);
    const state = pidFile ? await processState(pidFile) : 'gone';
    if (pidFile && state === 'server') {
      await refuseForeign(pidFile, cluster);
      const entered = await tryToEnter(task, pidFile);
      if (entered) return { port: pidFile.port, adopted: starts === 0, entered };
      continue;
    }
    if (state === 'zombie' && Date.now() - (zombieSince ||= Date.now()) < zombieWaitMs) continue;
    // Dead for certain, but its number is in use: PostgreSQL would take the file for a living server's.
    if (state !== 'gone') await rm(join(cluster, 'postmaster.pid'), { force: true });
    if (starts++ >= 10) break;
    await start(task);
  }
  throw new SetUpError(`The database in ${cluster} did not come up.`, `See ${task.home.log} for the reason, and start again.`);
}
