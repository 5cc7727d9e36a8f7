import { execFile } from 'node:child_process';
import { readFile, readlink, realpath } from 'node:fs/promises';
import { join } from 'node:path';

/** What a running server writes about itself into its cluster (postmaster.pid). */
export interface PidFile {
  pid: number;
  folder: string;
  port: number;
}

/** `other`: the number was given to another program since, as happens after a reboot or in a new container. */
export type ProcessState = 'gone' | 'zombie' | 'server' | 'other';

/** @returns undefined when there is none, or when it is not fully written yet */
export async function readPidFile(cluster: string): Promise<PidFile | undefined> {
  const lines = (await readFile(join(cluster, 'postmaster.pid'), 'utf8').catch(() => '')).split('\n');
  const [pid, port] = [Number(lines[0]), Number(lines[3])];
  if (!Number.isInteger(pid) || pid <= 0) return undefined;
  return { pid, folder: lines[1] ?? '', port: Number.isInteger(port) ? port : 0 };
}

/** The port of the last start, which PostgreSQL records in postmaster.opts; 0 when it never started. */
export async function lastPort(cluster: string): Promise<number> {
  const text = await readFile(join(cluster, 'postmaster.opts'), 'utf8').catch(() => '');
  return Number(/"-p" "(\d+)"/.exec(text)?.[1] ?? 0);
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

function psLine(pid: number): Promise<string> {
  return new Promise((resolve) => execFile('ps', ['-o', 'stat=,comm=', '-p', String(pid)], (_error, stdout) => resolve(stdout.trim())));
}

/** State letter and program name as the system tells them; '' when it does not tell. */
async function describe(pid: number): Promise<{ state: string; command: string }> {
  // "123 (postgres) S 1 …": a name may hold spaces and brackets, so the last bracket ends it.
  const proc = await readFile(`/proc/${pid}/stat`, 'utf8').catch(() => '');
  const parts = /^\d+ \((.*)\) (\S)/s.exec(proc);
  if (parts) return { command: parts[1] ?? '', state: parts[2] ?? '' };
  if (process.platform === 'linux' || process.platform === 'win32') return { command: '', state: '' };
  const [state = '', ...command] = (await psLine(pid)).split(/\s+/);
  return { state, command: command.join(' ') };
}

/** Tells whether the process that a pid file names is still the server that wrote it. In doubt it is taken for it. */
export async function processState({ pid, folder }: PidFile): Promise<ProcessState> {
  if (!isAlive(pid)) return 'gone';
  const { state, command } = await describe(pid);
  if (state.startsWith('Z') || state.startsWith('X')) return 'zombie';
  if (command && !command.includes('postgres')) return 'other';
  // A server works inside its folder. The link is readable for root and for the server's own user.
  const worksIn = await readlink(`/proc/${pid}/cwd`).catch(() => undefined);
  const named = await realpath(folder).catch(() => folder);
  return worksIn === undefined || worksIn === named || worksIn.endsWith(' (deleted)') ? 'server' : 'other';
}
