import type pg from 'pg';
import { appliedRows } from '../migrate.js';
import { madeBy, refuseStrangers, type Migration } from '../migrations.js';
import { SetUpError } from '../set-up-error.js';
import { hasTable, holdsPeople, quoted, readTables } from './catalogue.js';

/** The database that a backup is put into: whether it may be, and how it is emptied. */

/** The name that a server's connections go by; see db.ts, which keeps at least one open. */
const serverName = 'rungwise';

/** @throws SetUpError while a server, or another command, works on the database */
export async function refuseWhileInUse(client: pg.ClientBase): Promise<void> {
  const { rows } = await client.query<{ count: number }>(
    'SELECT count(*)::int AS count FROM pg_stat_activity WHERE datname = current_database() AND application_name = $1',
    [serverName],
  );
  if (rows[0]?.count === 0) return;
  throw new SetUpError(
    'A Rungwise server (or another of its commands) is working with this database.',
    'Stop every server on it, and try again. Nothing was changed.',
  );
}

/** @returns true when people are in it. @throws SetUpError when it is newer than the program or holds something that is not ours */
export async function lookAtTarget(client: pg.ClientBase, known: readonly Migration[]): Promise<boolean> {
  if (await hasTable(client, '_prisma_migrations')) {
    refuseStrangers(await appliedRows(client), known);
    return await holdsPeople(client);
  }
  const [strange] = await readTables(client, madeBy(known).tables);
  if (strange === undefined) return false;
  throw new SetUpError(
    `The database has a table ${strange.name} that Rungwise did not make.`,
    'Give Rungwise a database of its own (DATABASE_URL). Nothing was changed.',
  );
}

/** Takes away what the migrations made, and nothing else: who depends on it from outside makes this fail. */
export async function dropOurs(client: pg.ClientBase, known: readonly Migration[]): Promise<void> {
  const { tables, functions } = madeBy(known);
  const names = ['_prisma_migrations', ...tables].map(quoted);
  await client.query(`DROP TABLE IF EXISTS ${names.join(', ')}`);
  if (functions.length > 0) await client.query(`DROP FUNCTION IF EXISTS ${functions.map(quoted).join(', ')}`);
}
