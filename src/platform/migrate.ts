import { createHash, randomUUID } from 'node:crypto';
import { readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import pg from 'pg';
import { SetUpError, codeOf, explain } from './set-up-error.js';

interface Migration {
  name: string;
  sql: string;
  checksum: string;
}

interface AppliedRow {
  migration_name: string;
  checksum: string;
  finished: boolean;
}

/** The number that Prisma's own commands lock, so that they and we never migrate at the same time. */
const lock = 72_707_369;
const lockWaitMs = 120_000;

const recordTable = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
  id varchar(36) PRIMARY KEY NOT NULL,
  checksum varchar(64) NOT NULL,
  finished_at timestamptz,
  migration_name varchar(255) NOT NULL,
  logs text,
  rolled_back_at timestamptz,
  started_at timestamptz NOT NULL DEFAULT now(),
  applied_steps_count integer NOT NULL DEFAULT 0
)`;

/** Lines end in LF for the checksum, whatever git made of them on this system; for LF files it is the one Prisma writes. */
function checksumOf(sql: string): string {
  return createHash('sha256').update(sql.replaceAll('\r\n', '\n')).digest('hex');
}

/**
 * Reads the migrations: each `NNNN_name/migration.sql`, in the order of their numbers.
 * @throws SetUpError when a folder has no SQL file or no number
 */
async function readMigrations(folder: string): Promise<Migration[]> {
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

/** What is applied must be the beginning of what we have, unchanged; else database and program do not belong together. */
function refuseStrangers(applied: AppliedRow[], known: Migration[]): void {
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
      `The database is newer than this program: it has ${unknown.join(', ')}, which this program does not know.`,
      'Start the newer Rungwise, or put back a backup from before the change.',
    );
  }
  applied.forEach((row, index) => {
    const expected = known[index];
    if (expected?.name !== row.migration_name) {
      throw new SetUpError(
        `The migration ${expected?.name} comes before ${row.migration_name}, which the database has already.`,
        'Give the new migration a higher number.',
      );
    }
    if (expected.checksum !== row.checksum) {
      throw new SetUpError(
        `The migration ${row.migration_name} was changed after the database took it.`,
        'Put the file back as it was, and write the change as a new migration.',
      );
    }
  });
}

async function apply(client: pg.ClientBase, { name, sql, checksum }: Migration): Promise<void> {
  await client.query('BEGIN');
  try {
    // Without parameters the whole text goes as one simple query: nothing cuts it at a semicolon.
    await client.query(sql);
    await client.query(
      `INSERT INTO "_prisma_migrations" (id, checksum, migration_name, started_at, finished_at, applied_steps_count)
       VALUES ($1, $2, $3, now(), clock_timestamp(), 1)`,
      [randomUUID(), checksum, name],
    );
    await client.query('COMMIT');
  } catch (error) {
    await client.query('ROLLBACK').catch(() => undefined);
    const at = (error as pg.DatabaseError).position;
    const line = at ? ` (line ${sql.slice(0, Number(at)).split('\n').length})` : '';
    throw new SetUpError(
      `The migration ${name} failed${line}: ${explain(error)}. Nothing of it was kept.`,
      'Report this; the database is as it was before.',
      {
        cause: error,
      },
    );
  }
}

async function takeLock(client: pg.ClientBase): Promise<void> {
  await client.query(`SET statement_timeout = 0; SET idle_in_transaction_session_timeout = 0; SET lock_timeout = ${lockWaitMs}`);
  try {
    await client.query('SELECT pg_advisory_lock($1)', [lock]);
  } catch (error) {
    if (codeOf(error) !== '55P03') throw error;
    throw new SetUpError('Another server has been changing the database for two minutes.', 'Wait until it is done and start again.');
  }
  // What a migration waits for is other people's work: let it give up and be tried again rather than stop them all.
  await client.query('SET lock_timeout = 10000');
}

async function migrateWith(client: pg.ClientBase, folder: string): Promise<string[]> {
  const known = await readMigrations(folder);
  await takeLock(client);
  await client.query(recordTable).catch((error: unknown) => {
    if (codeOf(error) !== '42501') throw error;
    throw new SetUpError(`The database does not let this user make tables: ${explain(error)}.`, 'Make the user the owner of the database.');
  });
  const { rows } = await client.query<AppliedRow>(
    `SELECT migration_name, checksum, finished_at IS NOT NULL AS finished
     FROM "_prisma_migrations" WHERE rolled_back_at IS NULL ORDER BY migration_name COLLATE "C"`,
  );
  refuseStrangers(rows, known);
  const fresh = known.slice(rows.length);
  for (const migration of fresh) await apply(client, migration);
  return fresh.map(({ name }) => name);
}

/**
 * Brings the database to the state this program needs. Files in `folder` that the database has not had yet are applied
 * in order, each in one transaction, and recorded in `_prisma_migrations` as Prisma does. Servers that start at the same
 * time wait for each other. A file must not hold BEGIN, COMMIT or anything that cannot be in a transaction.
 * @returns the names of those applied now
 * @throws SetUpError when a file fails (nothing of it is kept), was changed afterwards, or is unknown to this program
 */
export async function migrate(url: string, folder: string): Promise<{ applied: string[] }> {
  const client = new pg.Client({ connectionString: url, application_name: 'rungwise migrate', connectionTimeoutMillis: 5000 });
  client.on('error', () => undefined); // the running query reports it
  await client.connect().catch(async (error: unknown) => {
    await client.end().catch(() => undefined);
    throw new SetUpError(`The database cannot be reached: ${explain(error)}.`, 'Check that it runs, and that DATABASE_URL is right.', {
      cause: error,
    });
  });
  try {
    return { applied: await migrateWith(client, folder) };
  } finally {
    await client.end();
  }
}
