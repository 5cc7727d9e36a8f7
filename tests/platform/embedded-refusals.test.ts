import { chmod, chown, cp, mkdir, readFile, readdir, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { setUp } from '../../scripts/set-up.mjs';
import { closedFolder } from '../../src/platform/embedded-postgres/account.js';
import { refuseWithoutRoom } from '../../src/platform/embedded-postgres/data-folder.js';
import { startEmbeddedPostgres, type EmbeddedOptions } from '../../src/platform/embedded-postgres/index.js';
import { projectFolder } from '../../src/platform/project-folder.js';
import { SetUpError } from '../../src/platform/set-up-error.js';
import { ask, clusterOf, serverPid, startInChild, temporaryFolder } from '../support/embedded.js';

let folder: string;
let remove: () => Promise<void>;
/** A cluster that was made and stopped; each test takes a copy. */
let made: string;

beforeAll(async () => {
  ({ folder, remove } = await temporaryFolder());
  made = join(folder, 'made');
  await setUp({ print: () => undefined });
  await (await startEmbeddedPostgres({ dataFolder: made, log: () => undefined })).stop();
}, 120_000);
afterAll(() => remove());

async function copy(name: string, from = made): Promise<string> {
  const to = join(folder, name);
  await cp(from, to, { recursive: true });
  return to;
}

/** Starts, which must be refused, and returns what was said. */
async function refusal(dataFolder: string, more: Partial<EmbeddedOptions> = {}): Promise<SetUpError> {
  const database = await startEmbeddedPostgres({ dataFolder, log: () => undefined, ...more }).catch((error: unknown) => error);
  if (database instanceof SetUpError) return database;
  if (database instanceof Error) throw database;
  await (database as { stop(): Promise<boolean> }).stop();
  throw new Error('It started, although it should have been refused.');
}

describe('the embedded database refuses', () => {
  it('a database of another major version, names both versions, and changes nothing', async () => {
    const data = await copy('older');
    await writeFile(join(clusterOf(data), 'PG_VERSION'), '17\n');
    const error = await refusal(data);
    expect(error.message).toMatch(/made by PostgreSQL 17, and this Rungwise brings PostgreSQL 18/);
    expect(error.advice).toContain('RUNGWISE_DATA');
    expect(await readFile(join(clusterOf(data), 'PG_VERSION'), 'utf8')).toBe('17\n');
  });

  it('a folder that holds something else, and leaves it as it was', async () => {
    const data = join(folder, 'photographs');
    await mkdir(data);
    await writeFile(join(data, 'holiday.jpg'), '');
    const error = await refusal(data);
    expect(error.message).toContain(`${data} holds something else already (holiday.jpg)`);
    expect(error.advice).toContain('RUNGWISE_DATA');
    expect(await readdir(data)).toEqual(['holiday.jpg']);
  });

  it('a file in place of a folder', async () => {
    const data = join(folder, 'file');
    await writeFile(data, '');
    expect((await refusal(data)).message).toContain(`${data} cannot be used: there is a file of that name`);
    expect((await refusal(join(data, 'below'))).message).toContain('something on the way to it is a file');
  });

  it('a disk without room, before anything is written', async () => {
    await expect(refuseWithoutRoom(folder, 1)).resolves.toBeUndefined();
    await expect(refuseWithoutRoom(folder, Number.MAX_SAFE_INTEGER)).rejects.toThrow(/has only \d+ MB free, and the database needs \d+ MB/);
  });

  it('a cluster that Rungwise did not make', async () => {
    const data = await copy('stranger');
    await rm(join(clusterOf(data), 'rungwise-access.json'));
    expect((await refusal(data)).message).toContain('was not made by Rungwise');
  });

  it('a copy of a folder whose server is running, and a running server that does not take the password', async () => {
    const original = await copy('original');
    const database = await startEmbeddedPostgres({ dataFolder: original, log: () => undefined });
    try {
      const error = await refusal(await copy('duplicate', original));
      expect(error.message).toContain(
        `is a copy of one in ${clusterOf(original)}, whose server (process ${await serverPid(original)}) is still running`,
      );
      const file = join(clusterOf(original), 'rungwise-access.json');
      await writeFile(file, JSON.stringify({ password: 'wrong', adminPassword: 'wrong' }));
      expect((await refusal(original)).message).toContain("refuses Rungwise's password");
      expect(await ask(database.url, 'SELECT 1 AS one')).toEqual([{ one: 1 }]);
    } finally {
      await database.stop();
    }
  });
});

const nobody = { uid: 65_534, gid: 65_534, name: 'nobody' };
// Only root can be two users. Where root keeps the project in a folder of its own, another user cannot run it at all.
const isRoot = process.getuid?.() === 0;
const othersMayEnter = isRoot && (await closedFolder(projectFolder, nobody)) === undefined;

if (othersMayEnter) {
  describe('an ordinary user', () => {
    it('runs the embedded database himself, in a folder of his own', async () => {
      const data = join(folder, 'ordinary');
      await mkdir(data);
      await chown(data, nobody.uid, nobody.gid);
      const child = startInChild(data, nobody.uid);
      const report = await child.report();
      expect(report).toMatchObject({ uid: nobody.uid, adopted: false });
      expect(await ask(report.url ?? '', 'SELECT 1 AS one')).toEqual([{ one: 1 }]);
      expect((await stat(`/proc/${await serverPid(data)}`)).uid).toBe(nobody.uid);
      child.kill('SIGTERM');
      expect(await child.report()).toEqual({ stopped: true });
    });

    it('is told when the folder is not his to write, and when the database is another user’s', async () => {
      const closed = join(folder, 'closed');
      await mkdir(closed);
      expect((await startInChild(join(closed, 'data'), nobody.uid).report()).refused).toContain('this user may not write there');
      const data = await copy('roots');
      await chmod(data, 0o777);
      expect(await startInChild(data, nobody.uid).report()).toMatchObject({
        refused: expect.stringMatching(/belongs to user number \d+, and this is user number 65534/) as string,
        advice: expect.stringContaining('Start Rungwise as the user who started it first') as string,
      });
    });
  });
}

if (isRoot) {
  describe('root', () => {
    it('runs the database as another user, and takes it over from the ordinary user who made it', async () => {
      const data = join(folder, 'handed');
      await mkdir(data);
      await chown(data, nobody.uid, nobody.gid);
      const database = await startEmbeddedPostgres({ dataFolder: data, log: () => undefined });
      expect((await stat(`/proc/${await serverPid(data)}`)).uid).toBe(nobody.uid);
      await database.stop();
      const { uid } = await stat(clusterOf(made));
      expect(uid).not.toBe(0);
    });

    it('starts a database that was copied back from a backup as root', async () => {
      const data = await copy('restored'); // the copies belong to root
      expect((await stat(clusterOf(data))).uid).toBe(0);
      const database = await startEmbeddedPostgres({ dataFolder: data, log: () => undefined });
      expect(await database.stop()).toBe(true);
    });

    it('is told which folder above is closed to the database’s user', async () => {
      const closed = join(folder, 'private');
      await mkdir(closed, { mode: 0o700 });
      const error = await refusal(join(closed, 'data'));
      expect(error.message).toContain(`may not pass through ${closed} to reach ${closed}/data/postgres`);
      expect(error.advice).toContain(`chmod o+x ${closed}`);
    });

    it('keeps the database outside a closed folder where it is allowed to, and finds it there again', async () => {
      const closed = join(folder, 'home');
      const outside = join(folder, 'outside');
      await mkdir(closed, { mode: 0o700 });
      const said: string[] = [];
      const options = { dataFolder: join(closed, 'data'), outside, log: (text: string) => said.push(text) };
      const first = await startEmbeddedPostgres(options);
      await ask(first.url, 'CREATE TABLE kept AS SELECT 42 AS answer');
      await first.stop();
      expect(said.join()).toContain(`may not enter ${closed}: the database is kept in ${outside}/rungwise-`);
      const second = await startEmbeddedPostgres(options);
      expect(await ask(second.url, 'SELECT answer FROM kept')).toEqual([{ answer: 42 }]);
      await second.stop();
      expect(await readdir(outside)).toHaveLength(1);
    });
  });
}
