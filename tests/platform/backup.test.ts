import { spawnSync } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { cp, mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Decrypter, Encrypter } from 'age-encryption';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import pg from 'pg';
import { checkBackup, restoreBackup, writeBackup, type Removed } from '../../src/platform/backup/index.js';
import { dropOurs } from '../../src/platform/backup/target.js';
import { openDatabase } from '../../src/platform/db.js';
import { migrate } from '../../src/platform/migrate.js';
import { readMigrations } from '../../src/platform/migrations.js';
import { contents, counters, fillByHand, migrationsFolder, notInBackups, oddTexts, program } from '../support/backups.js';
import { emptyDatabase, freshDatabase, type TestDatabase } from '../support/database.js';
import { ask } from '../support/embedded.js';

/** Everything that is in a database comes back from its backup, and nothing else is touched. */

// A passphrase is made slow to try, and a busy computer makes it slower.
vi.setConfig({ testTimeout: 120_000 });

// `age` of its own project, and `script`, which is a terminal to it: where both are there.
const [ageProgram, terminal] = ['age', 'script'] as const;
const hasAge = [ageProgram, terminal].every((program) => spawnSync(program, ['--version']).status === 0);
const now = new Date('2026-11-28T02:30:00Z');
let folder: string;
let source: TestDatabase;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'rungwise-backup-'));
  source = await freshDatabase();
  await fillByHand(source.url, 3000);
});
afterAll(async () => {
  await source.drop();
  await rm(folder, { recursive: true });
});

let target: TestDatabase;
beforeEach(async () => (target = await emptyDatabase()));
afterEach(() => target.drop());

const write = (file: string, passphrase?: string, url = source.url) =>
  writeBackup({ url, file: join(folder, file), passphrase, program, migrationsFolder, now });
const restore = (file: string, more: { passphrase?: string; replace?: boolean; removed?: Removed[]; url?: string } = {}) =>
  restoreBackup({
    url: target.url,
    file: join(folder, file),
    migrationsFolder,
    program,
    now,
    removed: [],
    before: { folder: join(folder, 'kept') },
    ...more,
  });

describe('a backup', () => {
  it('comes back row by row in every table, with odd text, bytes, arrays and times, and its counters', async () => {
    const report = await write('plain.backup');
    expect(report.rows).toMatchObject({ answer: 3000, person: oddTexts.length - 1, study_plan: 2, session: 0, guess: 0, pack_upload: 0 });
    const restored = await restore('plain.backup');
    expect(restored.migrated).toEqual([]);
    expect(await contents(target.url, notInBackups)).toEqual(await contents(source.url, notInBackups));
    expect(await counters(target.url)).toEqual(await counters(source.url));
    for (const table of notInBackups) expect(await ask(target.url, `SELECT * FROM ${table}`)).toEqual([]);
    for (const table of notInBackups) expect(await ask(source.url, `SELECT * FROM ${table}`)).toHaveLength(1);
  });

  it('has rules, triggers and indexes again, as the migrations make them', async () => {
    await write('rules.backup');
    await restore('rules.backup');
    const rules = `SELECT conrelid::regclass::text AS on, conname AS name, pg_get_constraintdef(oid) AS what FROM pg_constraint WHERE connamespace = 'public'::regnamespace
      UNION ALL SELECT tablename, indexname, indexdef FROM pg_indexes WHERE schemaname = 'public'
      UNION ALL SELECT tgrelid::regclass::text, tgname, pg_get_triggerdef(oid) FROM pg_trigger WHERE NOT tgisinternal ORDER BY 1, 2, 3`;
    expect(await ask(target.url, rules)).toEqual(await ask(source.url, rules));
    await expect(ask(target.url, 'UPDATE answer SET day = 1')).rejects.toThrow(/answer/);
  });

  it('is for its owner alone, and leaves nothing beside it', async () => {
    await write('mode.backup');
    expect((await stat(join(folder, 'mode.backup'))).mode & 0o777).toBe(0o600);
    expect((await readdir(folder)).filter((name) => name.startsWith('.'))).toEqual([]);
  });

  it('does not write over a file, unless told', async () => {
    await writeFile(join(folder, 'there.backup'), 'mine');
    await expect(write('there.backup')).rejects.toThrow(/There is a file .*there\.backup already/);
    expect(await readFile(join(folder, 'there.backup'), 'utf8')).toBe('mine');
    await writeBackup({ url: source.url, file: join(folder, 'there.backup'), program, migrationsFolder, now, replace: true });
    expect((await checkBackup({ file: join(folder, 'there.backup'), migrationsFolder })).rows['answer']).toBe(3000);
  });

  it('says what to do when its place cannot be written, and leaves nothing', async () => {
    await expect(write('not/there.backup')).rejects.toMatchObject({
      message: expect.stringContaining('its folder is not there') as string,
    });
    const full = writeBackup({ url: source.url, file: '/dev/full/x', program, migrationsFolder, now });
    await expect(full).rejects.toMatchObject({ name: 'SetUpError' });
  });

  it('holds one moment, while others write', async () => {
    const writer = new pg.Client({ connectionString: source.url });
    await writer.connect();
    let [going, written] = [true, 0];
    const work = (async () => {
      while (going) {
        // Two tables that always agree: a class and its one member are made and removed together.
        await writer.query(
          `WITH made AS (INSERT INTO study_class (name) VALUES ('pair') RETURNING id) INSERT INTO class_member (class_id, person_id) SELECT id, 1 FROM made`,
        );
        if (written % 3 === 2)
          await writer.query(`DELETE FROM study_class WHERE id = (SELECT min(id) FROM study_class WHERE name = 'pair')`);
        written += 1;
      }
    })();
    try {
      await expect.poll(() => written).toBeGreaterThan(5);
      const [before, report] = [written, await write('busy.backup')];
      expect(written).toBeGreaterThan(before);
      expect(report.rows['study_class']).toBeGreaterThan(1);
      await restore('busy.backup');
      const [pairs] = await ask<{ classes: number; members: number }>(
        target.url,
        `SELECT count(*)::int AS classes, count(m)::int AS members FROM study_class c LEFT JOIN class_member m ON m.class_id = c.id WHERE c.name = 'pair'`,
      );
      expect(pairs?.classes).toBeGreaterThan(0);
      expect(pairs?.members).toBe(pairs?.classes);
      // The next number is one that no class has had.
      await ask(target.url, `INSERT INTO study_class (name) VALUES ('next')`);
    } finally {
      going = false;
      await work;
      await writer.query(`DELETE FROM study_class WHERE name = 'pair'`);
      await writer.end();
    }
  });

  it('of a database that an older program left comes back, and is brought up to date in the same step', async () => {
    const names = (await readdir(migrationsFolder)).filter((name) => /^\d{4}_/.test(name)).sort();
    const [early, late] = [names.slice(0, 7), names.slice(7)];
    const [old, few] = [await emptyDatabase(), await mkdtemp(join(tmpdir(), 'rungwise-few-'))];
    try {
      for (const name of early) await cp(join(migrationsFolder, name), join(few, name), { recursive: true });
      await migrate(old.url, few);
      await ask(
        old.url,
        `INSERT INTO person (display_name, role, time_zone, region) SELECT 'Odo ' || n, 'candidate', 'Europe/London', 'uk' FROM generate_series(1, 9) n`,
      );
      const report = await write('old.backup', undefined, old.url);
      expect(report.about.migrations.map(({ name }) => name)).toEqual(early);
      expect(report.about.installation).toBeNull();
      expect((await restore('old.backup')).migrated).toEqual(late);
      const people = 'SELECT id, display_name, created_at FROM person ORDER BY id';
      expect(await ask(target.url, people)).toEqual(await ask(old.url, people));
      expect(await migrate(target.url, migrationsFolder)).toEqual({ applied: [] });
    } finally {
      await old.drop();
      await rm(few, { recursive: true });
    }
  });

  it('is not taken of a database that is newer than the program, nor of one without Rungwise', async () => {
    await expect(write('none.backup', undefined, target.url)).rejects.toThrow('There is nothing to back up');
    await ask(
      source.url,
      `INSERT INTO _prisma_migrations (id, checksum, migration_name, finished_at) VALUES ('new', 'x', '9999_new', now())`,
    );
    try {
      await expect(write('newer.backup')).rejects.toThrow('The database is newer than this program: it has 9999_new');
    } finally {
      await ask(source.url, `DELETE FROM _prisma_migrations WHERE id = 'new'`);
    }
    expect((await readdir(folder)).filter((name) => /none|newer/.test(name))).toEqual([]);
  });
});

describe('an encrypted backup', () => {
  const passphrase = 'nether wobbling brass kettle seven';

  it('comes back with its passphrase, and with no other', async () => {
    expect(await write('sealed.backup', passphrase)).toMatchObject({ encrypted: true });
    const bytes = await readFile(join(folder, 'sealed.backup'));
    expect(bytes.subarray(0, 22).toString()).toBe('age-encryption.org/v1\n');
    expect(bytes.includes('answer')).toBe(false);
    await expect(restore('sealed.backup')).rejects.toMatchObject({
      message: expect.stringContaining('is encrypted') as string,
      advice: expect.stringContaining('--passphrase-file') as string,
    });
    await expect(restore('sealed.backup', { passphrase: `${passphrase} ` })).rejects.toThrow(/The passphrase does not open the backup/);
    await restore('sealed.backup', { passphrase });
    expect(await contents(target.url, notInBackups)).toEqual(await contents(source.url, notInBackups));
  });

  // The library's own reading of the format, which shares no code with how the passphrase is stretched here.
  it('is opened by the library for its format as anybody would call it, and holds a plain tar', async () => {
    await write('open.backup', passphrase);
    const decrypter = new Decrypter();
    decrypter.addPassphrase(passphrase);
    const tar = Buffer.from(await decrypter.decrypt(await readFile(join(folder, 'open.backup'))));
    expect(tar.subarray(0, 10).toString()).toBe('about.json');
    await writeFile(join(folder, 'opened.backup'), tar);
    expect((await checkBackup({ file: join(folder, 'opened.backup'), migrationsFolder })).rows['answer']).toBe(3000);
  });

  it('that the library wrote is read here too', async () => {
    await write('bare.backup');
    const encrypter = new Encrypter();
    encrypter.setPassphrase(passphrase);
    encrypter.setScryptWorkFactor(10);
    await writeFile(join(folder, 'theirs.backup'), await encrypter.encrypt(await readFile(join(folder, 'bare.backup'))));
    const read = (word: string) => checkBackup({ file: join(folder, 'theirs.backup'), passphrase: word, migrationsFolder });
    expect((await read(passphrase)).rows['answer']).toBe(3000);
    await expect(read('another one altogether')).rejects.toThrow('The passphrase does not open');
  });

  // Only where that program is: a test that is skipped would count as a fault.
  if (hasAge)
    it('is opened by the age program', async () => {
      await write('age.backup', passphrase);
      const [file, out] = [join(folder, 'age.backup'), join(folder, 'age.tar')];
      // The program takes a passphrase from a terminal only: `script` is one.
      const child = spawnSync(terminal, ['-qec', `${ageProgram} -d -o ${out} ${file}`, '/dev/null'], {
        input: `${passphrase}\n`,
        timeout: 100_000,
      });
      expect([child.status, String(child.stdout)]).toEqual([0, expect.anything()]);
      expect((await checkBackup({ file: out, migrationsFolder })).rows['answer']).toBe(3000);
    });

  it('costs no more memory than ours does: a file that asks for more is refused', async () => {
    await write('dear.backup', passphrase);
    const bytes = await readFile(join(folder, 'dear.backup'));
    const at = bytes.indexOf(' 18\n');
    await writeFile(join(folder, 'dear.backup'), Buffer.concat([bytes.subarray(0, at), Buffer.from(' 22\n'), bytes.subarray(at + 4)]));
    const began = performance.now();
    await expect(checkBackup({ file: join(folder, 'dear.backup'), passphrase, migrationsFolder })).rejects.toThrow(
      'The passphrase does not open',
    );
    expect(performance.now() - began).toBeLessThan(1000);
  });
});

describe('a restore', () => {
  beforeAll(() => write('whole.backup'));

  it('refuses a database that holds people, and with --replace takes a backup of them first', async () => {
    await migrate(target.url, migrationsFolder);
    await fillByHand(target.url, 10);
    await ask(target.url, `UPDATE person SET display_name = 'Corin'`);
    const was = await contents(target.url);
    await expect(restore('whole.backup')).rejects.toMatchObject({
      message: 'The database holds people already.',
      advice: expect.stringContaining('--replace') as string,
    });
    expect(await contents(target.url)).toEqual(was);
    const { before } = await restore('whole.backup', { replace: true });
    expect(await contents(target.url, notInBackups)).toEqual(await contents(source.url, notInBackups));
    expect(before).toBe(join(folder, 'kept', 'before-restore-2026-11-28-0230.backup'));
    const third = await emptyDatabase();
    try {
      await restoreBackup({ url: third.url, file: before ?? '', migrationsFolder, program, now, removed: [], before: { folder } });
      for (const table of notInBackups) was[table] = [];
      expect(await contents(third.url)).toEqual(was);
    } finally {
      await third.drop();
    }
  });

  it('puts a database aside that has Rungwise and nobody in it', async () => {
    await migrate(target.url, migrationsFolder);
    await ask(target.url, `INSERT INTO installation (cookie_secret, phrase_salt) VALUES ('x', 'y')`);
    expect((await restore('whole.backup')).before).toBeNull();
    expect(await contents(target.url, notInBackups)).toEqual(await contents(source.url, notInBackups));
  });

  it('refuses while a server is there, even one that nobody asks anything of', async () => {
    await migrate(target.url, migrationsFolder);
    const server = openDatabase({ url: target.url, log: () => undefined });
    await server.pool.query('SELECT 1');
    // Longer than a pool keeps what it need not keep.
    await new Promise((resolve) => setTimeout(resolve, 11_000));
    await expect(restore('whole.backup')).rejects.toMatchObject({
      message: expect.stringContaining('A Rungwise server') as string,
      advice: expect.stringContaining('Stop every server') as string,
    });
    await server.close();
    await restore('whole.backup');
  });

  it('touches nothing that is not ours, and refuses what stands where ours would', async () => {
    await ask(target.url, `CREATE TABLE clubhouse (key text)`);
    await ask(target.url, `INSERT INTO clubhouse VALUES ('brass')`);
    await restore('whole.backup');
    expect(await ask(target.url, 'SELECT key FROM clubhouse')).toEqual([{ key: 'brass' }]);
    const other = await emptyDatabase();
    try {
      await ask(other.url, 'CREATE TABLE session (id text)');
      await expect(restore('whole.backup', { url: other.url })).rejects.toThrow(
        'The database has a table session that Rungwise did not make.',
      );
      expect(await ask(other.url, 'SELECT * FROM session')).toEqual([]);
    } finally {
      await other.drop();
    }
  });

  it('takes away all that the migrations made', async () => {
    await restore('whole.backup');
    const client = new pg.Client({ connectionString: target.url });
    await client.connect();
    await dropOurs(client, await readMigrations(migrationsFolder));
    await client.end();
    const left = `SELECT relname::text AS name FROM pg_class WHERE relnamespace = 'public'::regnamespace
      UNION ALL SELECT proname FROM pg_proc WHERE pronamespace = 'public'::regnamespace
      UNION ALL SELECT typname FROM pg_type WHERE typnamespace = 'public'::regnamespace`;
    expect(await ask(target.url, left)).toEqual([]);
  });

  it('hands over who was removed since, from the list and from the database that it replaces, and undoes all when that fails', async () => {
    await migrate(target.url, migrationsFolder);
    const [listed, known] = [randomUUID(), randomUUID()];
    await ask(target.url, `INSERT INTO removed_person (mark, removed_at, why) VALUES ($1, '2026-11-02T12:00:00Z', 'time')`, [known]);
    const was = await contents(target.url);
    const seen: Removed[] = [];
    const attempt = (fails: boolean) =>
      restoreBackup({
        url: target.url,
        file: join(folder, 'whole.backup'),
        migrationsFolder,
        program,
        now,
        before: { folder },
        removed: [{ mark: listed, day: '2026-11-01' }],
        afterLoad: async (sql, people) => {
          seen.push(...people);
          expect((await sql.query('SELECT FROM answer')).rowCount).toBe(3000);
          if (fails) throw new Error('cannot');
        },
      });
    await expect(attempt(true)).rejects.toThrow('cannot');
    await expect.poll(() => contents(target.url)).toEqual(was);
    seen.length = 0;
    await attempt(false);
    expect(seen).toEqual([
      { mark: listed, day: '2026-11-01' },
      { mark: known, day: '2026-11-02', why: 'time' },
    ]);
  });
});
