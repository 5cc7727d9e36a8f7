import { readdir, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeName, nightlyName, outOfRotation } from '../../core/backup-rotation.js';
import { SetUpError, explain } from '../set-up-error.js';
import { checkBackup } from './check.js';
import { rowsIn, type BackupReport, type Progress } from './format.js';
import { isPart, makeFolder } from './new-file.js';
import { writeBackup } from './write.js';

/** The folder in which the server keeps its own backups. */

export interface KeptBackups {
  url: string;
  folder: string;
  passphrase?: string | undefined;
  program: { version: string };
  migrationsFolder: string;
  now: Date;
  progress?: Progress;
}

export interface NightlyResult {
  file: string;
  bytes: number;
  rows: number;
  /** Names of older ones whose time was up. */
  removed: string[];
}

/** Takes the night's backup, reads it back whole, and only then removes those whose time is up. @throws SetUpError */
export async function nightlyBackup(request: KeptBackups): Promise<NightlyResult> {
  // Taken twice in a minute, the later is the better one.
  const { file, bytes, rows } = await taken(request, nightlyName(request.now));
  return { file, bytes, rows: rowsIn(rows), removed: await rotate(request.folder, request.now) };
}

/**
 * A backup before something is done to the database that may not be undone.
 * @param what a migration's name, or `restore`
 * @returns the path of the file
 * @throws SetUpError when it cannot be written or read back: then leave the database as it is
 */
export async function backupBefore(what: string, request: KeptBackups): Promise<string> {
  const { file } = await taken(request, beforeName(what, request.now));
  await rotate(request.folder, request.now);
  return file;
}

async function taken({ folder, passphrase, migrationsFolder, ...request }: KeptBackups, name: string): Promise<BackupReport> {
  await makeFolder(folder);
  const file = join(folder, name);
  const written = await writeBackup({ ...request, file, passphrase, migrationsFolder, replace: true });
  await checkBackup({ file, passphrase, migrationsFolder });
  return written;
}

const dayMs = 86_400_000;

/** Removes what is out of rotation, and halves of files that a killed process left more than a day ago. */
async function rotate(folder: string, now: Date): Promise<string[]> {
  const names = await readdir(folder);
  const removed = outOfRotation(names);
  for (const name of removed) await rm(join(folder, name), { force: true });
  for (const name of names.filter(isPart)) {
    const { mtimeMs } = await stat(join(folder, name)).catch(() => ({ mtimeMs: Infinity }));
    if (mtimeMs < now.getTime() - dayMs) await rm(join(folder, name), { force: true });
  }
  return removed;
}

/**
 * What a start does before a migration: a backup, or the reason why nothing is changed.
 * @param first the first migration that is to be applied
 * @throws SetUpError
 */
export async function backupBeforeMigration(first: string, request: () => Promise<KeptBackups>): Promise<string> {
  try {
    return await backupBefore(first, await request());
  } catch (error) {
    throw new SetUpError(
      `The database is to be changed (${first}), and no backup could be taken before: ${explain(error)} Nothing was changed.`,
      error instanceof SetUpError
        ? error.advice
        : 'Make room in the folder for backups, or set RUNGWISE_BACKUPS to another, and start again.',
      { cause: error },
    );
  }
}
