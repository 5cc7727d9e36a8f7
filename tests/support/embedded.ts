import { spawn } from 'node:child_process';
import { chmod, mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout as wait } from 'node:timers/promises';
import { pathToFileURL } from 'node:url';
import pg from 'pg';
import { projectFolder } from '../../src/platform/project-folder.js';

/** A folder that any user may pass through, and its removal. */
export async function temporaryFolder(): Promise<{ folder: string; remove: () => Promise<void> }> {
  const folder = await mkdtemp(join(tmpdir(), 'rungwise-embedded-'));
  await chmod(folder, 0o711);
  return { folder, remove: () => rm(folder, { recursive: true, force: true }) };
}

/** One statement over a connection of its own. */
export async function ask<T extends pg.QueryResultRow>(url: string, text: string, values: unknown[] = []): Promise<T[]> {
  const client = new pg.Client({ connectionString: url, connectionTimeoutMillis: 3000 });
  client.on('error', () => undefined);
  await client.connect();
  try {
    return (await client.query<T>(text, values)).rows;
  } finally {
    await client.end();
  }
}

export const clusterOf = (dataFolder: string): string => join(dataFolder, 'postgres', 'cluster');

/** The process number of the database server on a data folder. */
export async function serverPid(dataFolder: string): Promise<number> {
  return Number((await readFile(join(clusterOf(dataFolder), 'postmaster.pid'), 'utf8')).split('\n')[0]);
}

/** Asks again until the question is answered without an error. */
export async function eventually<T>(question: () => Promise<T>, milliseconds = 15_000): Promise<T> {
  for (const until = Date.now() + milliseconds; ; await wait(50)) {
    try {
      return await question();
    } catch (error) {
      if (Date.now() > until) throw error;
    }
  }
}

export interface ChildReport {
  uid?: number;
  url?: string;
  adopted?: boolean;
  refused?: string;
  advice?: string;
  stopped?: boolean;
}

/** Starts the embedded database from another process. It needs the compiled program. */
export function startInChild(dataFolder: string, uid?: number) {
  const program = join(projectFolder, 'tests', 'support', 'embedded-child.mjs');
  const module = pathToFileURL(join(projectFolder, 'dist', 'src', 'platform', 'embedded-postgres', 'index.js')).href;
  const child = spawn(process.execPath, [program, dataFolder, module], {
    cwd: '/',
    stdio: ['ignore', 'pipe', 'inherit'],
    ...(uid === undefined ? {} : { uid, gid: uid }),
  });
  const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  const report = async (): Promise<ChildReport> => JSON.parse(String((await lines.next()).value ?? '{}')) as ChildReport;
  return { report, ended, kill: (signal: NodeJS.Signals) => child.kill(signal) };
}
