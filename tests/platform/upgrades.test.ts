import { cp, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { readdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { fillDemonstration, type DemonstrationAccess } from '../../prisma/seed.js';
import { ensureInstallation } from '../../src/accounts/index.js';
import { run as replay } from '../../src/cli/replay.js';
import { packsService, readPackFolder } from '../../src/packs/index.js';
import { checkBackup } from '../../src/platform/backup/index.js';
import { readTables } from '../../src/platform/backup/catalogue.js';
import { systemClock } from '../../src/platform/clock.js';
import { openDatabase } from '../../src/platform/db.js';
import { migrate } from '../../src/platform/migrate.js';
import { madeBy, readMigrations } from '../../src/platform/migrations.js';
import { projectFolder } from '../../src/platform/project-folder.js';
import { enrolAll } from '../../src/study/index.js';
import { migrationsFolder } from '../support/backups.js';
import { catalogueOf } from '../support/catalogue.js';
import { emptyDatabase, freshDatabase, type TestDatabase } from '../support/database.js';
import { ask } from '../support/embedded.js';
import { HttpVisitor, startServer } from '../support/server-process.js';

/**
 * A database of every earlier state, filled as the demonstration fills one, is brought up to date and loses nothing. The rows are those of
 * the newest state, cut down to the tables and columns that there were.
 */

type Row = Record<string, unknown>;
const names = readdirSync(migrationsFolder)
  .filter((name) => /^\d{4}_/.test(name))
  .sort();

/** Rows that an earlier state could not have held, since what they say came with a later migration. */
const cameLater: { with: string; what: string; is: (table: string, row: Row, kinds: ReadonlyMap<unknown, unknown>) => boolean }[] = [
  {
    with: '0002_question_kinds',
    what: 'questions of more kinds than two, and all that hangs on them',
    is: (table, row, kinds) =>
      !['single', 'numeric'].includes(String(kinds.get(table === 'question' ? row['id'] : row['question_id']) ?? 'single')),
  },
  {
    with: '0008_papers',
    what: 'answers without a word on how sure',
    is: (table, row) => table === 'answer' && row['certainty'] === 'unsaid',
  },
];

/** Columns whose values a later migration changes on purpose: `{ with: '0011_…', columns: ['person.region'], why: '…' }`. None so far. */
const changedOnPurpose: { with: string; columns: string[]; why: string }[] = [];

let full: TestDatabase;
let access: DemonstrationAccess;
let rowsOf: Map<string, Row[]>;
beforeAll(async () => {
  full = await freshDatabase();
  const db = openDatabase({ url: full.url, log: () => undefined });
  const { pack } = await readPackFolder(join(projectFolder, 'question-packs', 'entry-safety'));
  if (pack === null) throw new Error('the shipped pack cannot be read');
  await packsService({ db, enrolAll }).load(pack);
  const installation = await ensureInstallation(db, { cookieSecret: Buffer.alloc(32, 7), phraseSalt: Buffer.alloc(16, 9) });
  access = await fillDemonstration(db, installation, systemClock);
  await db.close();
  rowsOf = await withClient(full.url, async (client) => {
    const all = new Map<string, Row[]>();
    for (const { name } of await ownTables(client)) all.set(name, await rowsIn(client, name, []));
    return all;
  });
}, 300_000);
afterAll(() => full.drop());

let database: TestDatabase;
let folder: string;
beforeEach(async () => {
  database = await emptyDatabase();
  folder = await mkdtemp(join(tmpdir(), 'rungwise-upgrade-'));
});
afterEach(async () => {
  vi.unstubAllEnvs();
  await database.drop();
  await rm(folder, { recursive: true });
});

async function withClient<T>(url: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end();
  }
}

/** In an order in which they can be filled. */
const ownTables = async (client: pg.Client) => readTables(client, madeBy(await readMigrations(migrationsFolder)).tables);

/** @param columns all, when there are none */
async function rowsIn(client: pg.Client, table: string, columns: readonly string[]): Promise<Row[]> {
  const list = columns.length === 0 ? '*' : columns.map((column) => `"${column}"`).join(', ');
  const { rows } = await client.query<{ row: Row }>(`SELECT row_to_json(t) AS row FROM (SELECT ${list} FROM "${table}") t`);
  return rows.map(({ row }) => row);
}

const sorted = (rows: readonly Row[]): string[] => rows.map((row) => JSON.stringify(row)).sort();

/** Makes the database as it was after these migrations, and fills it. @returns every row of every table, as it lies there */
async function makeState(state: readonly string[]): Promise<Map<string, { columns: string[]; rows: string[] }>> {
  const few = join(folder, 'migrations');
  for (const name of state) await cp(join(migrationsFolder, name), join(few, name), { recursive: true });
  await migrate(database.url, few);
  const kinds = new Map((rowsOf.get('question') ?? []).map((row) => [row['id'], row['kind']]));
  const late = cameLater.filter((rule) => !state.includes(rule.with));
  return await withClient(database.url, async (client) => {
    const held = new Map<string, { columns: string[]; rows: string[] }>();
    for (const { name, columns: there } of await ownTables(client)) {
      const rows = (rowsOf.get(name) ?? []).filter((row) => !late.some(({ is }) => is(name, row, kinds)));
      const columns = there.map((column) => column.name).filter((column) => rows[0] === undefined || column in rows[0]);
      const list = columns.map((column) => `"${column}"`).join(', ');
      await client.query(`INSERT INTO "${name}" (${list}) SELECT ${list} FROM json_populate_recordset(NULL::"${name}", $1)`, [
        JSON.stringify(rows),
      ]);
      if (columns.includes('id') && typeof rows[0]?.['id'] === 'number' && name !== 'installation')
        await client.query(`SELECT setval(pg_get_serial_sequence($1, 'id'), (SELECT max(id) FROM "${name}"))`, [`public.${name}`]);
      held.set(name, { columns, rows: sorted(await rowsIn(client, name, columns)) });
    }
    return held;
  });
}

const keptColumns = (table: string, columns: readonly string[], later: readonly string[]): string[] => {
  const changed = changedOnPurpose.filter((change) => later.includes(change.with)).flatMap((change) => change.columns);
  return columns.filter((column) => !changed.includes(`${table}.${column}`));
};

describe('a database of an earlier state, filled as the demonstration fills one', () => {
  it.each(names.slice(0, -1).map((name, index) => [name, index] as const))(
    'after %s loses nothing on the way up, and a candidate finds their page',
    async (_, index) => {
      const [state, later] = [names.slice(0, index + 1), names.slice(index + 1)];
      const held = await makeState(state);
      expect([...held.values()].reduce((sum, { rows }) => sum + rows.length, 0)).toBeGreaterThan(3000);
      expect((await migrate(database.url, migrationsFolder)).applied).toEqual(later);
      await withClient(database.url, async (client) => {
        for (const [table, { columns, rows }] of held) {
          const kept = keptColumns(table, columns, later);
          const was = kept.length === columns.length ? rows : sorted(rows.map((row) => cut(JSON.parse(row) as Row, kept)));
          expect(sorted(await rowsIn(client, table, kept)), table).toEqual(was);
        }
        const { rows: open } = await client.query(
          `SELECT conname FROM pg_constraint WHERE connamespace = 'public'::regnamespace AND NOT convalidated`,
        );
        expect(open).toEqual([]);
      });
      expect(await catalogueOf(database.url)).toEqual(await catalogueOf(full.url));
      // The tables are the same wherever they came from: the first, a middle and the last state stand for all.
      if (index % 4 === 0) await candidateComesBack();
    },
    180_000,
  );

  const cut = (row: Row, columns: readonly string[]): Row => Object.fromEntries(columns.map((column) => [column, row[column]]));

  async function candidateComesBack(): Promise<void> {
    const server = await startServer({ DATABASE_URL: database.url, RUNGWISE_DATA: join(folder, 'data') });
    try {
      const visitor = new HttpVisitor(server.address);
      const sent = await visitor.submit(await visitor.get('/return'), '/return', { phrase: access.candidate.phrase });
      expect(sent.status, sent.words).toBe(303);
      const page = await visitor.get('/');
      expect([page.status, page.html.querySelectorAll('h1').length]).toEqual([200, 1]);
      expect((await visitor.get('/progress')).status).toBe(200);
      expect((await visitor.get('/me')).text).toContain(access.candidate.name);
    } finally {
      await server.end('SIGTERM');
    }
  }
});

describe('the server and the commands', () => {
  it('bring an old database up to date themselves, after a backup that can be restored', async () => {
    await makeState(names.slice(0, -1));
    const server = await startServer({ DATABASE_URL: database.url, RUNGWISE_DATA: join(folder, 'data') });
    await server.end('SIGTERM');
    const kept = join(folder, 'data', 'backups');
    const file = (await readdir(kept)).find((name) => name.startsWith(`before-${names.at(-1)}-`)) ?? '';
    expect(server.said()).toContain(`${names.at(-1)}, after a backup: ${join(kept, file)}`);
    const { about, rows } = await checkBackup({ file: join(kept, file), migrationsFolder });
    expect(about.migrations.map(({ name }) => name)).toEqual(names.slice(0, -1));
    expect(rows['person']).toBe(rowsOf.get('person')?.length);
  }, 120_000);

  it('leave an old database as it is when no backup can be taken, and say what to do', async () => {
    await makeState(names.slice(0, -1));
    await writeFile(join(folder, 'file'), '');
    const blocked = { DATABASE_URL: database.url, RUNGWISE_DATA: join(folder, 'data'), RUNGWISE_BACKUPS: join(folder, 'file', 'backups') };
    const refused = await startServer(blocked).then(
      () => 'started',
      (error: unknown) => String(error),
    );
    expect(refused).toMatch(/failed +migrations/);
    expect(refused).toMatch(
      /The database is to be changed \(\w+\), and no backup could be taken before: .*\n +What to do: .*RUNGWISE_BACKUPS/,
    );
    for (const [name, value] of Object.entries(blocked)) vi.stubEnv(name, value);
    const said: string[] = [];
    expect(await replay(['--verify'], { out: (text) => void said.push(text), err: (text) => void said.push(text) })).toBe(2);
    expect(said.join('\n')).toMatch(/no backup could be taken before/);
    const applied = await ask<{ name: string }>(database.url, 'SELECT migration_name AS name FROM _prisma_migrations ORDER BY 1');
    expect(applied.map(({ name }) => name)).toEqual(names.slice(0, -1));
  }, 120_000);

  it('refuse a database that is newer than the program, in words', async () => {
    await migrate(database.url, migrationsFolder);
    await ask(
      database.url,
      `INSERT INTO _prisma_migrations (id, checksum, migration_name, finished_at) VALUES ('new', 'x', '9999_later', now())`,
    );
    const refused = await startServer({ DATABASE_URL: database.url, RUNGWISE_DATA: join(folder, 'data') }).then(
      () => 'started',
      (error: unknown) => String(error),
    );
    expect(refused).toMatch(/The database is newer than this program: it has 9999_later.*\n +What to do: Start the newer Rungwise/);
    vi.stubEnv('DATABASE_URL', database.url);
    const said: string[] = [];
    expect(await replay(['--verify'], { out: (text) => void said.push(text), err: (text) => void said.push(text) })).toBe(2);
    expect(said.join('\n')).toMatch(/The database is newer than this program: it has 9999_later/);
  }, 120_000);
});
