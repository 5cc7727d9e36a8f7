import type pg from 'pg';
import { from, type CopyStreamQuery } from 'pg-copy-streams';
import { SetUpError, explain } from '../set-up-error.js';
import { quoted, readSequences, readTables } from './catalogue.js';
import type { About, BackupTable, Progress } from './format.js';

/** Puts rows of a backup into empty tables, inside the caller's transaction. */

const misfit = (what: string, cause?: unknown): SetUpError =>
  new SetUpError(
    `The backup does not fit the tables that it names: ${what}.`,
    'Report this, and use another backup. The database is as it was before.',
    { cause },
  );

/** The tables that were made must be those that the backup holds, column by column. @throws SetUpError */
export async function refuseMisfit(client: pg.ClientBase, about: About, own: readonly string[]): Promise<void> {
  const shape = (tables: readonly Pick<BackupTable, 'name' | 'columns'>[]): string[] =>
    tables.map(({ name, columns }) => `${name} (${columns.map((column) => `${column.name} ${column.type}`).join(', ')})`).sort();
  const [here, there] = [shape(await readTables(client, own)), shape(about.tables)];
  const different = here.find((table) => !there.includes(table)) ?? there.find((table) => !here.includes(table));
  if (different !== undefined) throw misfit(`${different} is in one of them only`);
}

/** Takes pieces of tables in their order. */
export function loader(client: pg.ClientBase, about: About, progress: Progress) {
  let open: { table: string; stream: CopyStreamQuery; failed: Promise<never> } | undefined;
  const counted: Record<string, number> = {};

  function begin(name: string): NonNullable<typeof open> {
    const { columns } = about.tables.find((table) => table.name === name) as BackupTable;
    progress(`  ${name} …`);
    const stream = client.query(from(`COPY ${quoted(name)} (${columns.map((column) => quoted(column.name)).join(', ')}) FROM STDIN`));
    const failed = new Promise<never>((_, reject) => stream.on('error', (error) => reject(misfit(`${name}: ${explain(error)}`, error))));
    failed.catch(() => undefined);
    return { table: name, stream, failed };
  }

  async function end(): Promise<void> {
    if (open === undefined) return;
    const { table, stream, failed } = open;
    await Promise.race([new Promise<void>((resolve) => stream.end(resolve)), failed]);
    counted[table] = stream.rowCount;
    open = undefined;
  }

  async function rows(table: string, copy: Buffer): Promise<void> {
    if (open?.table !== table) {
      await end();
      open = begin(table);
    }
    const { stream, failed } = open;
    await Promise.race([new Promise<void>((resolve) => stream.write(copy, () => resolve())), failed]);
  }

  /** Ends the last table. @param expected rows by table, as counted in the file @throws SetUpError when the database took another number */
  async function finish(expected: Readonly<Record<string, number>>): Promise<void> {
    await end();
    const wrong = about.tables.find(({ name }) => (counted[name] ?? 0) !== expected[name]);
    if (wrong !== undefined) throw misfit(`${wrong.name} took ${counted[wrong.name] ?? 0} rows of ${expected[wrong.name]}`);
  }

  return { rows, finish };
}

/** Sets the counters, so that the next number is one that was never used. @throws SetUpError */
export async function setSequences(client: pg.ClientBase, about: About): Promise<void> {
  const here = (
    await readSequences(
      client,
      about.tables.map(({ name }) => name),
    )
  ).map(({ name }) => name);
  const wrong = here.find((name) => !about.sequences.some((sequence) => sequence.name === name));
  if (wrong !== undefined || here.length !== about.sequences.length) throw misfit(`the counter ${wrong ?? ''} is in one of them only`);
  for (const { name, value, called } of about.sequences)
    await client.query('SELECT setval($1::regclass, $2::bigint, $3)', [`public.${quoted(name)}`, value, called]);
}
