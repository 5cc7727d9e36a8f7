import { fork, type ChildProcess } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Coverage } from '../core/pack-checks.js';
import type { Finding } from './read-folder.js';

/** What a reading in a process of its own tells: all of `ReadPack` but the pack, and whether the folder could be opened at all. */
export interface ReadApart {
  findings: Finding[];
  head: { id: string; version: string } | null;
  coverage: Coverage[];
}

export interface ApartLimits {
  milliseconds?: number;
  /** Of the child's heap, in megabytes. The process as a whole takes about 120 more. */
  heap?: number;
}

/**
 * Reads and checks a pack folder in a child process that is ended when it takes too long or too much memory, so that no pack can
 * stop the caller. Rejects only when the child could not be started or broke for a reason that is not the pack's.
 */
export async function readPackFolderApart(folder: string, { milliseconds = 7_000, heap = 256 }: ApartLimits = {}): Promise<ReadApart> {
  const child = fork(fileURLToPath(new URL('./read-apart-child.js', import.meta.url)), [folder], {
    execArgv: [`--max-old-space-size=${heap}`, '--max-semi-space-size=8'],
    stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
    timeout: milliseconds,
    killSignal: 'SIGKILL',
  });
  return await outcome(child);
}

function outcome(child: ChildProcess): Promise<ReadApart> {
  return new Promise((resolve, reject) => {
    let answer: ReadApart | null = null;
    child.on('message', (message) => {
      answer = message as ReadApart;
    });
    child.on('error', reject);
    child.on('close', (code, signal) => {
      if (answer !== null) resolve(answer);
      else if (signal !== null || code === abortedExit) resolve(tooCostly);
      else reject(new Error(`the process that reads packs ended with code ${code} and said nothing`));
    });
  });
}

/** 128 and SIGABRT's number: what a shell-like wrapper makes of an abort. */
const abortedExit = 134;

const tooCostly: ReadApart = {
  findings: [
    {
      level: 'error',
      rule: 'too-costly',
      file: '.',
      line: 1,
      column: 1,
      path: '',
      message:
        'The pack takes too long or too much memory to read, so the reading was stopped. Take files out until it is read, and look at what the last one holds.',
    },
  ],
  head: null,
  coverage: [],
};
