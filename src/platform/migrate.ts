import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { readMigrations, refuseStrangers, type AppliedRow, type Migration } from './migrations.js';
import { SetUpError, codeOf, explain } from './set-up-error.js';

/** The number that Prisma's own commands lock, so that they and we never migrate at the same time. */
const lock = 72_707_369;
const lockWaitMs = 120_000;

export const recordTable = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
  id varchar(36) PRIMARY KEY NOT NULL,
  checksum varchar(64) NOT NULL,
  finished_at timestamptz,
  migration_name varchar(255) NOT NULL,
  logs text,
  rolled_back_at timestamptz,
  started_at timestamptz NOT NULL DEFAULT now(),
  applied_steps_count integer NOT NULL DEFAULT 0
)`;

/** Applies one file inside the caller's transaction, and records it. @throws SetUpError when it fails */
export async function applyInside(client: pg.ClientBase, { name, sql, checksum }: Migration): Promise<void> {
  try {
    // Without parameters the whole text goes as one simple query: nothing cuts it at a semicolon.
    await client.query(sql);
    await client.query(
      `INSERT INTO "_prisma_migrations" (id, checksum, migration_name, started_at, finished_at, applied_steps_count)
       VALUES ($1, $2, $3, now(), clock_timestamp(), 1)`,
      [randomUUID(), checksum, name],
    );
  } catch (error) {
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

async function apply(client: pg.ClientBase, migration: Migration): Promise<void> {
  await client.query('BEGIN');
  try {
    await applyInside(client, migration);
    await client.query('COMMIT');
  } catch (error) {
    await client.query('ROLLBACK').catch(() => undefined);
    throw error;
  }
}

async function waitFor(client: pg.ClientBase, how: 'pg_advisory_lock' | 'pg_advisory_xact_lock_shared'): Promise<void> {
  try {
    await client.query(`SELECT ${how}($1)`, [lock]);
  } catch (error) {
    if (codeOf(error) !== '55P03') throw error;
    throw new SetUpError('Another server has been changing the database for two minutes.', 'Wait until it is done and start again.');
  }
}

/**
 * Whether there is nothing to do, as at nearly every start. Whoever changes the schema is waited for, but in one transaction: a lock of
 * the session would outlive this connection where a pooler stands between, and the next start would wait for it in vain.
 */
async function isUpToDate(client: pg.ClientBase, known: Migration[]): Promise<boolean> {
  await client.query('BEGIN');
  try {
    await client.query(`SET LOCAL statement_timeout = 0; SET LOCAL lock_timeout = ${lockWaitMs}`);
    await waitFor(client, 'pg_advisory_xact_lock_shared');
    const rows = await appliedRows(client);
    if (rows.length !== known.length) return false;
    refuseStrangers(rows, known);
    return true;
  } catch (error) {
    // A new database has no such table.
    if (codeOf(error) === '42P01') return false;
    throw error;
  } finally {
    await client.query('ROLLBACK').catch(() => undefined);
  }
}

/** Waits until nobody else changes the schema, and keeps it so until the connection ends. Statements may then take as long as they need. */
export async function takeLock(client: pg.ClientBase): Promise<void> {
  await client.query(`SET statement_timeout = 0; SET idle_in_transaction_session_timeout = 0; SET lock_timeout = ${lockWaitMs}`);
  await waitFor(client, 'pg_advisory_lock');
  // What a migration waits for is other people's work: let it give up and be tried again rather than stop them all.
  await client.query('SET lock_timeout = 10000');
}

/** What the database has had, in order. */
export async function appliedRows(client: Pick<pg.ClientBase, 'query'>): Promise<AppliedRow[]> {
  const { rows } = await client.query<AppliedRow>(
    `SELECT migration_name, checksum, finished_at IS NOT NULL AS finished
     FROM "_prisma_migrations" WHERE rolled_back_at IS NULL ORDER BY migration_name COLLATE "C"`,
  );
  return rows;
}

/** The name of the last migration that the database has had, by any connection. */
export async function lastMigration(sql: Pick<pg.ClientBase, 'query'>): Promise<string | undefined> {
  return (await appliedRows(sql)).filter(({ finished }) => finished).at(-1)?.migration_name;
}

async function migrateWith(client: pg.ClientBase, folder: string, before: BeforeMigrating | undefined): Promise<string[]> {
  const known = await readMigrations(folder);
  if (await isUpToDate(client, known)) return [];
  await takeLock(client);
  await client.query(recordTable).catch((error: unknown) => {
    if (codeOf(error) !== '42501') throw error;
    throw new SetUpError(`The database does not let this user make tables: ${explain(error)}.`, 'Make the user the owner of the database.');
  });
  const rows = await appliedRows(client);
  refuseStrangers(rows, known);
  const fresh = known.slice(rows.length);
  const [first] = fresh;
  if (first !== undefined && rows.length > 0) await before?.(first.name);
  for (const migration of fresh) await apply(client, migration);
  return fresh.map(({ name }) => name);
}

/** Done before a database that has had migrations gets more, while other servers wait. When it throws, nothing is changed. */
export type BeforeMigrating = (first: string) => Promise<void>;

/** A connection to change the database by. @throws SetUpError when there is none */
export async function connectTo(url: string, name: string): Promise<pg.Client> {
  const client = new pg.Client({ connectionString: url, application_name: name, connectionTimeoutMillis: 5000 });
  client.on('error', () => undefined); // the running query reports it
  await client.connect().catch(async (error: unknown) => {
    await client.end().catch(() => undefined);
    throw new SetUpError(`The database cannot be reached: ${explain(error)}.`, 'Check that it runs, and that DATABASE_URL is right.', {
      cause: error,
    });
  });
  return client;
}

/** Breaks the connection off. A server that is in the middle of sending or taking a table would not listen to a goodbye. */
export function hangUp(client: pg.Client): void {
  (client as unknown as { connection: { stream: { destroy(): void } } }).connection.stream.destroy();
}

/**
 * Brings the database to the state this program needs. Files in `folder` that the database has not had yet are applied
 * in order, each in one transaction, and recorded in `_prisma_migrations` as Prisma does. Servers that start at the same
 * time wait for each other. A file must not hold BEGIN, COMMIT or anything that cannot be in a transaction.
 * @returns the names of those applied now
 * @throws SetUpError when a file fails (nothing of it is kept), was changed afterwards, or is unknown to this program
 */
export async function migrate(url: string, folder: string, before?: BeforeMigrating): Promise<{ applied: string[] }> {
  const client = await connectTo(url, 'rungwise migrate');
  try {
    return { applied: await migrateWith(client, folder, before) };
  } finally {
    await client.end();
  }
}
