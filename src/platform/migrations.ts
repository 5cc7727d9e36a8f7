import { createHash } from 'node:crypto';
import { readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { SetUpError, explain } from './set-up-error.js';

/** The files of the migrations, and what a database that had some of them must have to do with them. */

export interface Migration {
  name: string;
  sql: string;
  checksum: string;
}

export interface AppliedRow {
  migration_name: string;
  checksum: string;
  finished: boolean;
}

/** Lines end in LF for the checksum, whatever git made of them on this system; for LF files it is the one Prisma writes. */
function checksumOf(sql: string): string {
  return createHash('sha256').update(sql.replaceAll('\r\n', '\n')).digest('hex');
}

/**
 * Reads the migrations: each `NNNN_name/migration.sql`, in the order of their numbers.
 * @throws SetUpError when a folder has no SQL file or no number
 */
export async function readMigrations(folder: string): Promise<Migration[]> {
  const entries = await readdir(folder, { withFileTypes: true });
  const names = entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  const misnamed = names.find((name) => !/^\d{4}_[a-z0-9_]+$/.test(name));
  if (misnamed) throw new SetUpError(`The migration folder ${join(folder, misnamed)} is not named NNNN_name.`, 'Rename it.');
  return Promise.all(
    names.sort().map(async (name) => {
      const path = join(folder, name, 'migration.sql');
      const sql = await readFile(path, 'utf8').catch((error: unknown) => {
        throw new SetUpError(`The migration ${path} cannot be read: ${explain(error)}.`, 'Put it back; it belongs to the program.');
      });
      return { name, sql, checksum: checksumOf(sql) };
    }),
  );
}

/**
 * What is applied must be the beginning of what we have, unchanged; else database and program do not belong together.
 * @param what had them, with a small letter: the database, or a backup of one
 * @throws SetUpError
 */
export function refuseStrangers(applied: readonly AppliedRow[], known: readonly Migration[], what = 'database'): void {
  const unfinished = applied.find((row) => !row.finished);
  if (unfinished) {
    throw new SetUpError(
      `The migration ${unfinished.migration_name} was begun by another tool and not finished.`,
      'Put the database back from a backup, or mend it by hand and mark the migration with `prisma migrate resolve`.',
    );
  }
  const unknown = applied.filter((row) => !known.some(({ name }) => name === row.migration_name)).map((row) => row.migration_name);
  if (unknown.length > 0) {
    throw new SetUpError(
      `The ${what} is newer than this program: it has ${unknown.join(', ')}, which this program does not know.`,
      'Start the newer Rungwise, or put back a backup from before the change.',
    );
  }
  applied.forEach((row, index) => {
    const expected = known[index];
    if (expected?.name !== row.migration_name) {
      throw new SetUpError(
        `The migration ${expected?.name} comes before ${row.migration_name}, which the ${what} has already.`,
        'Give the new migration a higher number.',
      );
    }
    if (expected.checksum !== row.checksum) {
      throw new SetUpError(
        `The migration ${row.migration_name} was changed after the ${what} took it.`,
        'Put the file back as it was, and write the change as a new migration.',
      );
    }
  });
}

/** The tables and functions that the migrations make, by name: what is ours in a database. */
export function madeBy(migrations: readonly Migration[]): { tables: string[]; functions: string[] } {
  const text = migrations.map(({ sql }) => sql).join('\n');
  const all = (pattern: RegExp): string[] => [...new Set([...text.matchAll(pattern)].map(([, name]) => name as string))];
  return {
    tables: all(/^CREATE TABLE (?:IF NOT EXISTS )?"?(\w+)"?/gim),
    functions: all(/^CREATE (?:OR REPLACE )?FUNCTION "?(\w+)"?/gim),
  };
}
