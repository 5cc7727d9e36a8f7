import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import { serverPid } from './embedded.js';

/** The database server's process and all that it began. */
export async function databaseFamily(dataFolder: string): Promise<number[]> {
  const postmaster = await serverPid(dataFolder);
  const { stdout } = await promisify(execFile)('ps', ['-axo', 'pid=,ppid=']);
  const children = stdout
    .split('\n')
    .map((line) => line.trim().split(/\s+/).map(Number))
    .filter(([, parent]) => parent === postmaster)
    .map(([pid]) => pid ?? 0);
  return [postmaster, ...children];
}

/** SIGKILL to all of them, one right after the other; who is gone already is passed over. */
export function killAll(pids: readonly number[]): void {
  for (const pid of pids) {
    try {
      process.kill(pid, 'SIGKILL');
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'ESRCH') throw error;
    }
  }
}
