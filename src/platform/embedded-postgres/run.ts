import { spawn } from 'node:child_process';
import { SetUpError } from '../set-up-error.js';
import type { Account } from './account.js';

export interface Finished {
  code: number;
  output: string;
}

/**
 * Runs one of PostgreSQL's programs to its end and returns its exit code and what it printed (both streams together).
 * The environment is a short list of our own, so that no PG… variable of the caller changes what the program does.
 * @param account the user to run as; undefined: the user of this process
 * @throws SetUpError when the program cannot be run at all
 */
export function run(
  program: string,
  args: string[],
  options: { cwd: string; account: Account | undefined; input?: string },
): Promise<Finished> {
  const { cwd, account, input } = options;
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, {
      cwd,
      ...(account ? { uid: account.uid, gid: account.gid } : {}),
      ...(process.platform === 'win32' ? {} : { env: { PATH: '/usr/bin:/bin:/usr/sbin:/sbin', LC_ALL: 'C', TZ: 'UTC' } }),
      stdio: ['pipe', 'pipe', 'pipe'],
      windowsHide: true,
    });
    let output = '';
    child.stdout.setEncoding('utf8').on('data', (text: string) => (output += text));
    child.stderr.setEncoding('utf8').on('data', (text: string) => (output += text));
    // A program that ends before it has read its input breaks the pipe; its exit code tells the rest.
    child.stdin.on('error', () => undefined);
    child.stdin.end(input ?? '');
    child.on('error', (error) =>
      reject(
        new SetUpError(
          `The database program ${program} cannot be run: ${error.message}.`,
          'Install the packages again (npm ci). On a system without glibc (Alpine) it does not run at all: set DATABASE_URL to a PostgreSQL server of your own.',
          { cause: error },
        ),
      ),
    );
    child.on('close', (code) => resolve({ code: code ?? 1, output: output.trim() }));
  });
}
