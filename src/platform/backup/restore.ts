import type pg from 'pg';
import { applyInside, appliedRows, connectTo, hangUp, recordTable, takeLock } from '../migrate.js';
import { madeBy, readMigrations, type Migration } from '../migrations.js';
import { SetUpError, codeOf } from '../set-up-error.js';
import { hasTable, plainText } from './catalogue.js';
import { checkBackup, refuseUnknown } from './check.js';
import { backupBefore } from './folder.js';
import { damaged, type About, type BackupReport, type Progress } from './format.js';
import { loader, refuseMisfit, setSequences } from './load.js';
import { readBackup } from './read.js';
import { dropOurs, lookAtTarget, refuseWhileInUse } from './target.js';

/** Somebody who was removed, and is not to come back with an older backup. */
export interface Removed {
  mark: string;
  /** YYYY-MM-DD */
  day: string;
  /** As the database said it; absent when only the list beside the backups knows. */
  why?: string;
}

export interface RestoreRequest {
  url: string;
  file: string;
  passphrase?: string | undefined;
  migrationsFolder: string;
  program: { version: string };
  now: Date;
  /** Puts aside a database that holds people; a backup of it is taken first. */
  replace?: boolean;
  /** Where that backup is put, and its passphrase. */
  before: { folder: string; passphrase?: string | undefined };
  /** Who is on the list beside the backups. Those whom the replaced database knows are added. */
  removed: readonly Removed[];
  /** Called in the same transaction when everything is in and up to date, to remove them. What it throws undoes the restore. */
  afterLoad?: (sql: pg.ClientBase, removed: readonly Removed[]) => Promise<void>;
  progress?: Progress;
}

export interface Restored extends BackupReport {
  /** The backup of what was there before; null when nobody was. */
  before: string | null;
  /** Migrations that the backup had not had yet. */
  migrated: string[];
}

/**
 * Puts a backup into a database. The file is read whole first; then one transaction takes away what was there, makes the tables as
 * they were at the time of the backup, fills them, and brings them up to date. A fault, or an end of this process, at any point
 * leaves the database as it was.
 * @throws SetUpError when the file or the database is not fit for it
 */
export async function restoreBackup(request: RestoreRequest): Promise<Restored> {
  const { url, file, passphrase, migrationsFolder, progress = () => undefined } = request;
  progress(`Checking ${file} …`);
  await checkBackup({ file, passphrase, migrationsFolder });
  const known = await readMigrations(migrationsFolder);
  const client = await connectTo(url, 'rungwise restore');
  let whole = false;
  try {
    await takeLock(client);
    await refuseWhileInUse(client);
    const before = (await lookAtTarget(client, known)) ? await putAside(request) : null;
    await client.query(plainText);
    await client.query('BEGIN');
    const restored = await replaceAll(client, known, request);
    await client.query('COMMIT');
    progress('Counting for the planner of queries …');
    await client.query('ANALYZE');
    whole = true;
    return { ...restored, before };
  } catch (error) {
    throw inWords(error);
  } finally {
    // Whatever is not committed goes with the connection.
    if (whole) await client.end();
    else hangUp(client);
  }
}

async function putAside({ replace = false, before, ...request }: RestoreRequest): Promise<string> {
  if (!replace) {
    throw new SetUpError(
      'The database holds people already.',
      'Say --replace to put the backup in their place: a backup of what is there now is taken first. Nothing was changed.',
    );
  }
  request.progress?.('Taking a backup of what is there …');
  return await backupBefore('restore', { ...request, ...before });
}

type InTransaction = Omit<Restored, 'before'>;

async function replaceAll(client: pg.Client, known: readonly Migration[], request: RestoreRequest): Promise<InTransaction> {
  const { file, passphrase, afterLoad, progress = () => undefined } = request;
  const removed = new Map([...request.removed, ...(await removedThere(client))].map((each) => [each.mark, each]));
  await dropOurs(client, known);
  let load: ReturnType<typeof loader> | undefined;
  const report = await readBackup(
    { file, passphrase },
    {
      about: async (about) => {
        refuseUnknown(about, known);
        await makeTables(client, about, known);
        load = loader(client, about, progress);
      },
      rows: async (table, copy) => await load?.rows(table, copy),
    },
  );
  await load?.finish(report.rows);
  await setSequences(client, report.about);
  await refuseOtherRecord(client, file, report.about);
  const fresh = known.slice(report.about.migrations.length);
  for (const migration of fresh) await applyInside(client, migration);
  await afterLoad?.(client, [...removed.values()]);
  return { ...report, migrated: fresh.map(({ name }) => name) };
}

/** Who was removed from the database that is being replaced. */
async function removedThere(client: pg.Client): Promise<Removed[]> {
  if (!(await hasTable(client, 'removed_person'))) return [];
  const { rows } = await client.query<Removed>(`SELECT mark, to_char(removed_at, 'YYYY-MM-DD') AS day, why FROM removed_person`);
  return rows;
}

/** The tables as they were at the time of the backup, empty. */
async function makeTables(client: pg.Client, about: About, known: readonly Migration[]): Promise<void> {
  await client.query(recordTable);
  for (const migration of known.slice(0, about.migrations.length)) await applyInside(client, migration);
  // The record comes from the backup, like every other table.
  await client.query('DELETE FROM "_prisma_migrations"');
  await refuseMisfit(client, about, ['_prisma_migrations', ...madeBy(known).tables]);
}

/** What the loaded record says must be what the backup said of itself. */
async function refuseOtherRecord(client: pg.Client, file: string, about: About): Promise<void> {
  const rows = await appliedRows(client);
  const same = rows.every((row, index) => {
    const said = about.migrations[index];
    return row.finished && said?.name === row.migration_name && said.checksum === row.checksum;
  });
  if (!same || rows.length !== about.migrations.length) throw damaged(file, 'its record of migrations is not the one that it names');
}

function inWords(error: unknown): unknown {
  if (codeOf(error) === '55P03')
    return new SetUpError(
      'Somebody else is working with the tables of this database.',
      'Wait until a backup that is being taken is done, stop every server, and try again. Nothing was changed.',
      { cause: error },
    );
  if (codeOf(error) === '2BP01')
    return new SetUpError(
      'Something that Rungwise did not make depends on its tables, so they cannot be replaced.',
      'Restore into a database of its own (DATABASE_URL). Nothing was changed.',
      { cause: error },
    );
  return error;
}
