import { createHash } from 'node:crypto';
import { promisify } from 'node:util';
import { gzip } from 'node:zlib';
import type pg from 'pg';
import { to } from 'pg-copy-streams';
import { appliedRows, connectTo, hangUp } from '../migrate.js';
import { madeBy, readMigrations, refuseStrangers, type Migration } from '../migrations.js';
import { SetUpError } from '../set-up-error.js';
import { hasTable, plainText, quoted, readSequences, readTables } from './catalogue.js';
import {
  aboutName,
  formatNumber,
  leftOut,
  mostBytes,
  pieceName,
  sumsName,
  type About,
  type BackupReport,
  type BackupTable,
  type Entry,
  type Progress,
  type Sums,
} from './format.js';
import { writeNewFile } from './new-file.js';
import { sealed } from './sealing.js';
import { tarOf } from './tar.js';

const packed = promisify(gzip);

export interface BackupRequest {
  url: string;
  file: string;
  /** Absent: the file is not encrypted. */
  passphrase?: string | undefined;
  program: { version: string };
  migrationsFolder: string;
  now: Date;
  /** Writes over a file of that name. */
  replace?: boolean;
  progress?: Progress;
}

/**
 * Writes all that the database holds to a file, as it stood at one moment, while others go on working with it. The database may be
 * older than the program. The file is there whole or not at all.
 * @throws SetUpError when the database is newer or not ours, or the file cannot be written
 */
export async function writeBackup(request: BackupRequest): Promise<BackupReport> {
  const { file, passphrase, migrationsFolder, replace = false, progress = () => undefined } = request;
  const known = await readMigrations(migrationsFolder);
  const client = await connectTo(request.url, 'rungwise backup');
  let whole = false;
  try {
    const about = await lookOver(client, known, request);
    const sums: Sums = { rows: {}, entries: [] };
    const tar = tarOf(entriesFrom(client, about, sums, progress));
    const bytes = await writeNewFile(file, passphrase === undefined ? tar : sealed(tar, passphrase), replace);
    await client.query('COMMIT');
    whole = true;
    return { file, bytes, encrypted: passphrase !== undefined, about, rows: sums.rows };
  } finally {
    if (whole) await client.end();
    else hangUp(client);
  }
}

/** Takes hold of one moment, and says what there is at it. */
async function lookOver(client: pg.ClientBase, known: readonly Migration[], { program, now }: BackupRequest): Promise<About> {
  await client.query(`SET statement_timeout = 0; SET idle_in_transaction_session_timeout = 0; SET lock_timeout = 60000; ${plainText}`);
  await client.query('BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY');
  if (!(await hasTable(client, '_prisma_migrations')))
    throw new SetUpError('There is nothing to back up: the database holds no Rungwise.', 'Check DATABASE_URL and RUNGWISE_DATA.');
  const applied = await appliedRows(client);
  refuseStrangers(applied, known);
  const tables = await readTables(client, ['_prisma_migrations', ...madeBy(known).tables]);
  const names = tables.map(({ name }) => name);
  // Nobody changes a table's columns from here to the end; ordinary work goes on.
  await client.query(`LOCK TABLE ${names.map(quoted).join(', ')} IN ACCESS SHARE MODE`);
  return {
    format: 'rungwise-backup',
    formatNumber,
    program: { version: program.version },
    takenAt: now.toISOString(),
    installation: await installationMark(client, tables),
    migrations: applied.map(({ migration_name: name, checksum }) => ({ name, checksum })),
    tables: tables.map(({ name, columns }) => ({ name, columns, leftOut: Object.hasOwn(leftOut, name) })),
    sequences: await readSequences(client, names),
  };
}

async function installationMark(client: pg.ClientBase, tables: readonly Pick<BackupTable, 'name' | 'columns'>[]): Promise<string | null> {
  const has = tables.some(({ name, columns }) => name === 'installation' && columns.some((column) => column.name === 'mark'));
  if (!has) return null;
  const { rows } = await client.query<{ mark: string }>('SELECT mark FROM installation');
  return rows[0]?.mark ?? null;
}

const json = (value: unknown): Buffer => Buffer.from(`${JSON.stringify(value, null, 1)}\n`);

async function* entriesFrom(client: pg.Client, about: About, sums: Sums, progress: Progress): AsyncGenerator<Entry> {
  const summed = (entry: Entry): Entry => {
    const sha256 = createHash('sha256').update(entry.data).digest('hex');
    sums.entries.push({ name: entry.name, bytes: entry.data.length, sha256 });
    return entry;
  };
  yield summed({ name: aboutName, data: json(about) });
  for (const table of about.tables) {
    let [rows, number] = [0, 0];
    if (!table.leftOut) {
      for await (const piece of piecesOf(client.query(to(copyOut(table))), mostBytes.unpacked)) {
        rows += linesIn(piece);
        number += 1;
        yield summed({ name: pieceName(table.name, number), data: await packed(piece) });
        if (number % 100 === 0) progress(`  ${table.name}: ${rows} rows so far`);
      }
    }
    sums.rows[table.name] = rows;
    progress(table.leftOut ? `  ${table.name}: left out, ${leftOut[table.name]}` : `  ${table.name}: ${rows} rows`);
  }
  yield { name: sumsName, data: json(sums) };
}

const copyOut = ({ name, columns }: BackupTable): string =>
  `COPY ${quoted(name)} (${columns.map((column) => quoted(column.name)).join(', ')}) TO STDOUT`;

/** The bytes of a stream in pieces of one size, wherever that cuts a row; the last is shorter. */
async function* piecesOf(source: AsyncIterable<Buffer>, size: number): AsyncGenerator<Buffer> {
  let [held, parts]: [number, Buffer[]] = [0, []];
  for await (let chunk of source) {
    while (held + chunk.length >= size) {
      const cut = size - held;
      yield Buffer.concat([...parts, chunk.subarray(0, cut)]);
      [held, parts] = [0, []];
      chunk = chunk.subarray(cut);
    }
    if (chunk.length > 0) parts.push(chunk);
    held += chunk.length;
  }
  if (held > 0) yield Buffer.concat(parts);
}

/** COPY writes a row in a line, and a line break inside a value as `\n`: lines are rows. */
export function linesIn(bytes: Buffer): number {
  let count = 0;
  for (let at = bytes.indexOf(10); at !== -1; at = bytes.indexOf(10, at + 1)) count += 1;
  return count;
}
