import { readFile, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { setUp } from '../../scripts/set-up.mjs';
import { startEmbeddedPostgres, type EmbeddedPostgres } from '../../src/platform/embedded-postgres/index.js';
import { ask, clusterOf, eventually, serverPid, startInChild, temporaryFolder } from '../support/embedded.js';

let folder: string;
let remove: () => Promise<void>;
let running: EmbeddedPostgres[] = [];

/** Starts one that the end of the test stops, whatever happens. */
async function start(dataFolder: string): Promise<EmbeddedPostgres> {
  const database = await startEmbeddedPostgres({ dataFolder, log: () => undefined });
  running.push(database);
  return database;
}

beforeAll(() => setUp({ print: () => undefined }), 120_000);
beforeEach(async () => ({ folder, remove } = await temporaryFolder()));
afterEach(async () => {
  for (const database of running) await database.stop();
  running = [];
  await remove();
});

describe('the embedded database', () => {
  it('starts in an empty folder, serves, stops, and has its data again at the next start', async () => {
    const data = join(folder, 'data');
    const first = await start(data);
    expect(first.adopted).toBe(false);
    await ask(first.url, 'CREATE TABLE kept AS SELECT 42 AS answer');
    expect(await first.stop()).toBe(true);
    await expect(ask(first.url, 'SELECT 1')).rejects.toMatchObject({ code: 'ECONNREFUSED' });
    const second = await start(data);
    expect(second.url).toBe(first.url);
    expect(await ask(second.url, 'SELECT answer FROM kept')).toEqual([{ answer: 42 }]);
  });

  it('is reached on the loopback only, keeps every acknowledged write, and sorts by code point', async () => {
    const { url, adminUrl } = await start(join(folder, 'data'));
    const settings = await ask<{ name: string; setting: string }>(
      adminUrl,
      `SELECT name, setting FROM pg_settings WHERE name IN ('listen_addresses', 'unix_socket_directories', 'fsync', 'synchronous_commit',
        'full_page_writes', 'data_checksums', 'password_encryption', 'TimeZone') ORDER BY name COLLATE "C"`,
    );
    expect(Object.fromEntries(settings.map(({ name, setting }) => [name, setting]))).toEqual({
      TimeZone: 'UTC',
      data_checksums: 'on',
      fsync: 'on',
      full_page_writes: 'on',
      listen_addresses: '127.0.0.1',
      password_encryption: 'scram-sha-256',
      synchronous_commit: 'on',
      unix_socket_directories: '',
    });
    expect(
      await ask(
        url,
        `SELECT pg_encoding_to_char(encoding) AS encoding, datlocprovider, datlocale FROM pg_database WHERE datname = current_database()`,
      ),
    ).toEqual([{ encoding: 'UTF8', datlocprovider: 'b', datlocale: 'C.UTF-8' }]);
    // 'Z' is U+005A, 'a' U+0061, 'é' U+00E9: a dictionary's order would put é beside e.
    expect(await ask(url, `SELECT string_agg(x, '' ORDER BY x) AS sorted FROM unnest(ARRAY['é', 'a', 'Z', 'f']) x`)).toEqual([
      { sorted: 'Zafé' },
    ]);
  });

  it('gives the program a role that owns its database and may do nothing beyond', async () => {
    const { url } = await start(join(folder, 'data'));
    expect(await ask(url, 'SELECT current_user AS user, rolsuper, rolcreaterole FROM pg_roles WHERE rolname = current_user')).toEqual([
      { user: 'rungwise', rolsuper: false, rolcreaterole: false },
    ]);
    await expect(ask(url.replace(/:[^:@]+@/, ':wrong@'), 'SELECT 1')).rejects.toMatchObject({ code: '28P01' });
  });

  it('keeps its passwords in a file for its own user only, and no other copy of them', async () => {
    const data = join(folder, 'data');
    const { url } = await start(data);
    const file = join(clusterOf(data), 'rungwise-access.json');
    expect((await stat(file)).mode & 0o777).toBe(0o600);
    expect((await stat(clusterOf(data))).mode & 0o777).toBe(0o700);
    const { password, adminPassword } = JSON.parse(await readFile(file, 'utf8')) as { password: string; adminPassword: string };
    expect(url).toContain(password);
    expect(password.length).toBeGreaterThanOrEqual(32);
    const log = await readFile(join(data, 'postgres', 'server.log'), 'utf8');
    expect(log).not.toContain(password);
    expect(log).not.toContain(adminPassword);
  });
});

describe('several servers on one data folder', () => {
  it('share one database when they start at the same moment on an empty folder', async () => {
    const data = join(folder, 'data');
    const [here, there] = [start(data), startInChild(data)];
    const [first, report] = [await here, await there.report()];
    expect(report.url).toBe(first.url);
    expect([first.adopted, report.adopted].filter((adopted) => !adopted)).toHaveLength(1);
    there.kill('SIGTERM');
    expect(await there.report()).toEqual({ stopped: false });
    expect(await ask(first.url, 'SELECT 1 AS one')).toEqual([{ one: 1 }]);
  });

  it('leave it running when the one that started it stops first, and the last one stops it', async () => {
    const data = join(folder, 'data');
    const starter = await start(data);
    const adopter = await start(data);
    expect([starter.adopted, adopter.adopted]).toEqual([false, true]);
    expect(await starter.stop()).toBe(false);
    expect(await ask(adopter.url, 'SELECT 1 AS one')).toEqual([{ one: 1 }]);
    expect(await adopter.stop()).toBe(true);
    await expect(ask(adopter.url, 'SELECT 1')).rejects.toMatchObject({ code: 'ECONNREFUSED' });
  });

  it('stop it exactly once when both stop at the same moment', async () => {
    const data = join(folder, 'data');
    const both = [await start(data), await start(data)];
    const stopped = await Promise.all(both.map((database) => database.stop()));
    expect(stopped.filter(Boolean)).toHaveLength(1);
  });
});

/** Writes rows one by one over one connection until it breaks; returns the numbers that were acknowledged. */
async function writeUntilItBreaks(url: string, onRow: (count: number) => void): Promise<number[]> {
  const acknowledged: number[] = [];
  await ask(url, 'CREATE TABLE IF NOT EXISTS kept (n integer PRIMARY KEY)');
  const { default: pg } = await import('pg');
  const client = new pg.Client({ connectionString: url });
  client.on('error', () => undefined);
  await client.connect();
  try {
    for (let n = 0; ; n += 1) {
      await client.query('INSERT INTO kept VALUES ($1)', [n]);
      acknowledged.push(n);
      onRow(acknowledged.length);
    }
  } catch {
    return acknowledged;
  }
}

describe('after a kill -9', () => {
  it('of the server, the database goes on, and the next server takes it over and stops it at its end', async () => {
    const data = join(folder, 'data');
    const killed = startInChild(data);
    const { url = '' } = await killed.report();
    await ask(url, 'CREATE TABLE kept AS SELECT 42 AS answer');
    killed.kill('SIGKILL');
    await killed.ended;
    expect(await ask(url, 'SELECT answer FROM kept')).toEqual([{ answer: 42 }]);
    const next = await start(data);
    expect(next).toMatchObject({ adopted: true, url });
    expect(await next.stop()).toBe(true);
  });

  it('of the database, the server brings it back on the same address with every acknowledged row', async () => {
    const data = join(folder, 'data');
    const { url } = await start(data);
    const pid = await serverPid(data);
    const acknowledged = await writeUntilItBreaks(url, (count) => {
      if (count === 300) process.kill(pid, 'SIGKILL');
    });
    expect(acknowledged.length).toBeGreaterThanOrEqual(300);
    const rows = await eventually(() => ask<{ n: number }>(url, 'SELECT n FROM kept ORDER BY n'));
    // One more than acknowledged is possible: written, but killed before it could say so.
    expect(rows.map(({ n }) => n).slice(0, acknowledged.length)).toEqual(acknowledged);
    expect(await serverPid(data)).not.toBe(pid);
  });

  it('of both, the next start repairs the database and has every acknowledged row', async () => {
    const data = join(folder, 'data');
    const killed = startInChild(data);
    const { url = '' } = await killed.report();
    const pid = await serverPid(data);
    const acknowledged = await writeUntilItBreaks(url, (count) => {
      if (count !== 300) return;
      killed.kill('SIGKILL');
      process.kill(pid, 'SIGKILL');
    });
    const next = await start(data);
    expect(next.adopted).toBe(false);
    const rows = await ask<{ n: number }>(next.url, 'SELECT n FROM kept ORDER BY n');
    expect(rows.map(({ n }) => n).slice(0, acknowledged.length)).toEqual(acknowledged);
    expect(acknowledged.length).toBeGreaterThanOrEqual(300);
  });

  it('a lock file whose number belongs to another program since does not stop the start', async () => {
    const data = join(folder, 'data');
    await (await start(data)).stop();
    // This very process lives, but is no database server.
    await writeFile(join(clusterOf(data), 'postmaster.pid'), `${process.pid}\n${clusterOf(data)}\n1\n1\n\n127.0.0.1\n1 1\nready   \n`);
    expect((await start(data)).adopted).toBe(false);
  });
});
