import { appendFile, cp, mkdir, mkdtemp, readdir, readFile, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { randomUUID } from 'node:crypto';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { nightlyBackup, readPassphrase, refuseShort, removedList } from '../../src/platform/backup/index.js';
import { backupBeforeMigration } from '../../src/platform/backup/folder.js';
import { migrate } from '../../src/platform/migrate.js';
import { fillByHand, migrationsFolder, program } from '../support/backups.js';
import { emptyDatabase, freshDatabase, type TestDatabase } from '../support/database.js';
import { ask } from '../support/embedded.js';

/** The folder that a server keeps its own backups in, and the list of removed people beside them. */

let database: TestDatabase;
let folder: string;
beforeAll(async () => {
  database = await freshDatabase();
  await fillByHand(database.url, 50);
});
afterAll(() => database.drop());
beforeEach(async () => (folder = await mkdtemp(join(tmpdir(), 'rungwise-folder-'))));
afterEach(() => rm(folder, { recursive: true }));

const nightly = (now: string, more: { folder?: string; passphrase?: string } = {}) =>
  nightlyBackup({ url: database.url, folder, program, migrationsFolder, now: new Date(now), ...more });

describe('the nightly backup', () => {
  it('makes its folder for the owner alone, names the file by its time, and says what is in it', async () => {
    const place = join(folder, 'data', 'backups');
    const { file, bytes, rows, removed } = await nightly('2026-11-28T02:30:00Z', { folder: place });
    expect(file).toBe(join(place, 'rungwise-2026-11-28-0230.backup'));
    expect([(await stat(place)).mode & 0o777, (await stat(file)).mode & 0o777, (await stat(file)).size]).toEqual([0o700, 0o600, bytes]);
    expect(removed).toEqual([]);
    const [counted] = await ask<{ rows: number }>(
      database.url,
      `SELECT sum((xpath('/row/c/text()', query_to_xml(format('SELECT count(*) AS c FROM %I', table_name), false, true, '')))[1]::text::int)::int AS rows
       FROM information_schema.tables WHERE table_schema = 'public' AND table_name NOT IN ('session', 'guess', 'pack_upload')`,
    );
    expect(rows).toBe(counted?.rows);
    await nightly('2026-11-28T02:30:30Z', { folder: place });
    expect(await readdir(place)).toEqual(['rungwise-2026-11-28-0230.backup']);
  });

  it('removes what is out of rotation and old halves, and nothing else', async () => {
    const others = ['removed-people.txt', 'notes.txt', 'rungwise-2026-02-31-0230.backup', '.rungwise-2026-11-28-0100.backup.00aa11bb.part'];
    const old = '.rungwise-2026-11-01-0230.backup.00aa11bb.part';
    for (const name of [...others, old, 'rungwise-2026-11-24-0100.backup', 'rungwise-2026-11-24-0230.backup'])
      await writeFile(join(folder, name), 'x');
    await utimes(join(folder, old), new Date('2026-11-01'), new Date('2026-11-01'));
    await utimes(join(folder, others[3] as string), new Date('2026-11-28T01:00:00Z'), new Date('2026-11-28T01:00:00Z'));
    expect((await nightly('2026-11-28T02:30:00Z')).removed).toEqual(['rungwise-2026-11-24-0100.backup']);
    expect((await readdir(folder)).sort()).toEqual(
      [...others, 'rungwise-2026-11-24-0230.backup', 'rungwise-2026-11-28-0230.backup'].sort(),
    );
  });

  it('removes nothing when it fails', async () => {
    for (const name of ['rungwise-2026-11-27-0100.backup', 'rungwise-2026-11-27-0230.backup']) await writeFile(join(folder, name), 'x');
    await mkdir(join(folder, 'rungwise-2026-11-28-0230.backup'));
    await expect(nightly('2026-11-28T02:30:00Z')).rejects.toMatchObject({
      name: 'SetUpError',
      advice: expect.stringContaining('RUNGWISE_BACKUPS') as string,
    });
    expect(await readdir(folder)).toHaveLength(3);
    const blocked = join(folder, 'rungwise-2026-11-27-0100.backup', 'deeper');
    await expect(nightly('2026-11-28T02:30:00Z', { folder: blocked })).rejects.toThrow('The folder for backups');
  });
});

describe('the backup before a migration', () => {
  it('is taken when people are in the database, and the migration is not done when it cannot be', async () => {
    const [old, few] = [await emptyDatabase(), await mkdtemp(join(tmpdir(), 'rungwise-few-'))];
    try {
      const names = (await readdir(migrationsFolder)).filter((name) => /^\d{4}_/.test(name)).sort();
      for (const name of names.slice(0, -1)) await cp(join(migrationsFolder, name), join(few, name), { recursive: true });
      await migrate(old.url, few);
      await ask(old.url, `INSERT INTO person (display_name, role, time_zone, region) VALUES ('Odo', 'candidate', 'Europe/London', 'uk')`);
      const upgrade = (place: string) =>
        migrate(old.url, migrationsFolder, async (first) => {
          await backupBeforeMigration(first, async () => ({
            url: old.url,
            folder: place,
            program,
            migrationsFolder,
            now: new Date('2026-11-28T14:05:00Z'),
          }));
        });
      await writeFile(join(folder, 'file'), '');
      await expect(upgrade(join(folder, 'file', 'x'))).rejects.toMatchObject({
        message: expect.stringMatching(
          /The database is to be changed \(\d{4}_\w+\), and no backup could be taken before: .* Nothing was changed\.$/,
        ) as string,
        advice: expect.stringContaining('RUNGWISE_BACKUPS') as string,
      });
      const had = 'SELECT count(*)::int AS n FROM _prisma_migrations';
      expect(await ask(old.url, had)).toEqual([{ n: names.length - 1 }]);
      expect(await upgrade(folder)).toEqual({ applied: names.slice(-1) });
      expect(await readdir(folder)).toContain(`before-${names.at(-1)}-2026-11-28-1405.backup`);
      expect(await upgrade(folder)).toEqual({ applied: [] });
    } finally {
      await old.drop();
      await rm(few, { recursive: true });
    }
  });
});

describe('the list of removed people', () => {
  it('holds marks and days and nothing else, one a line, for the owner alone', async () => {
    const list = removedList(join(folder, 'backups'));
    expect([await list.read(), [...(await list.marks())]]).toEqual([[], []]);
    const [one, other] = [randomUUID(), randomUUID()];
    await list.add(one, '2026-11-27');
    await list.add(other, '2026-11-28');
    const file = join(folder, 'backups', 'removed-people.txt');
    expect(await readFile(file, 'utf8')).toBe(`${one} 2026-11-27\n${other} 2026-11-28\n`);
    expect((await stat(file)).mode & 0o777).toBe(0o600);
    expect(await list.read()).toEqual([
      { mark: one, day: '2026-11-27' },
      { mark: other, day: '2026-11-28' },
    ]);
    expect([...(await list.marks())]).toEqual([one, other]);
  });

  it('bears a line that a power cut left half, and writes on behind it', async () => {
    const list = removedList(folder);
    const [one, other] = [randomUUID(), randomUUID()];
    await list.add(one, '2026-11-27');
    await appendFile(join(folder, 'removed-people.txt'), `${randomUUID()} 2026-1`);
    expect((await list.read()).map(({ mark }) => mark)).toEqual([one]);
    await list.add(other, '2026-11-28');
    expect((await list.read()).map(({ mark }) => mark)).toEqual([one, other]);
  });
});

describe('a passphrase', () => {
  const from = async (text: string) => {
    const file = join(folder, 'passphrase');
    await writeFile(file, text);
    return await readPassphrase(file);
  };

  it('is the one line of its file, spaces and all, without the break at its end', async () => {
    expect(await from('  brass kettle seven \r\n')).toBe('  brass kettle seven ');
    expect(await readPassphrase(undefined)).toBeUndefined();
  });

  it('is refused when it is not there, empty, more than a line, or short', async () => {
    await expect(readPassphrase(join(folder, 'none'))).rejects.toThrow('is not there');
    for (const text of ['', '\n', '   \n']) await expect(from(text)).rejects.toThrow('is empty');
    await expect(from('one\ntwo\n')).rejects.toThrow('more than one line');
    await expect(from('x'.repeat(2000))).rejects.toThrow('more than a passphrase');
    expect(() => refuseShort('elevenletts')).toThrow('shorter than 12');
    expect(() => refuseShort('twelveletter')).not.toThrow();
  });
});
