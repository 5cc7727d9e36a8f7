import { spawn } from 'node:child_process';
import { mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { connect, createServer, type AddressInfo, type Socket } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import type { CommandIo } from '../../src/cli/command.js';
import { run as backup } from '../../src/cli/backup.js';
import { run as checkBackup } from '../../src/cli/check-backup.js';
import { run as restore } from '../../src/cli/restore-backup.js';
import { projectFolder } from '../../src/platform/project-folder.js';
import { contents, fillByHand, migrationsFolder, notInBackups } from '../support/backups.js';
import { emptyDatabase, freshDatabase, type TestDatabase } from '../support/database.js';
import { ask, temporaryFolder } from '../support/embedded.js';
import { migrate } from '../../src/platform/migrate.js';

/** The commands that write, read and put back backups. */

let source: TestDatabase;
let target: TestDatabase;
let folder: string;
let file: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'rungwise-cli-'));
  file = join(folder, 'all.backup');
  source = await freshDatabase();
  await fillByHand(source.url, 6000);
});
afterAll(async () => {
  await source.drop();
  await rm(folder, { recursive: true });
});
beforeEach(async () => {
  target = await emptyDatabase();
  vi.stubEnv('RUNGWISE_BACKUPS', join(folder, 'kept'));
});
afterEach(async () => {
  vi.unstubAllEnvs();
  await target.drop();
});

type Run = (args: string[], io: CommandIo) => Promise<number>;
async function call(command: Run, url: string, ...args: string[]): Promise<{ status: number; out: string; err: string }> {
  vi.stubEnv('DATABASE_URL', url);
  const [out, err]: [string[], string[]] = [[], []];
  const status = await command(args, { out: (text) => void out.push(text), err: (text) => void err.push(text) });
  return { status, out: out.join('\n'), err: err.join('\n') };
}

/** All but what the restore itself adds: a line that it took place. */
const kept = (url: string) => contents(url, [...notInBackups, 'staff_change']);

describe('rungwise backup, check-backup and restore', () => {
  it('write a file, say what is in it, and put it back', async () => {
    const written = await call(backup, source.url, file);
    expect([written.status, written.out]).toEqual([
      0,
      expect.stringMatching(/^Backup written and read back: .*all\.backup\n11 people, [\d,]+ rows, /),
    ]);
    expect(written.err).toMatch(/answer: 6000 rows/);
    expect(written.err).toMatch(/session: left out, after a restore everybody signs in again/);
    expect((await stat(file)).mode & 0o777).toBe(0o600);
    const checked = await call(checkBackup, '', file);
    expect([checked.status, checked.out]).toEqual([0, expect.stringMatching(/^Sound: [\s\S]*\n {2}answer +6,000\n/)]);
    const restored = await call(restore, target.url, file);
    expect([restored.status, restored.out]).toEqual([
      0,
      expect.stringMatching(/^Restored: .*\n11 people, .*\nStart the server; everybody signs in again\.$/s),
    ]);
    expect(await kept(target.url)).toEqual(await kept(source.url));
    expect(await ask(target.url, 'SELECT person_id, role, what, about FROM staff_change')).toEqual([
      { person_id: null, role: 'command', what: 'restores a backup', about: { removedAgain: 0 } },
    ]);
  });

  it('answer in JSON, and take a folder for a file named by the time', async () => {
    const { status, out } = await call(backup, source.url, folder, '--json');
    const report = JSON.parse(out) as { file: string; rows: Record<string, number>; leftOut: string[]; encrypted: boolean };
    expect([status, report.rows['answer'], report.leftOut.sort(), report.encrypted]).toEqual([0, 6000, [...notInBackups].sort(), false]);
    expect(report.file).toMatch(/\/rungwise-\d{4}-\d\d-\d\d-\d{4}\.backup$/);
    expect(JSON.parse((await call(checkBackup, '', report.file, '--json')).out)).toMatchObject({ rows: { answer: 6000 } });
    expect(JSON.parse((await call(restore, target.url, report.file, '--json')).out)).toMatchObject({
      before: null,
      migrated: [],
      removedAgain: 0,
    });
  });

  it('take a passphrase from a file only, named by an option or a setting', async () => {
    const [secret, sealed] = [join(folder, 'secret'), join(folder, 'sealed.backup')];
    await writeFile(secret, 'nether wobbling brass kettle\n');
    expect((await call(backup, source.url, sealed, '--passphrase', 'nether wobbling brass kettle')).status).toBe(2);
    expect((await call(backup, source.url, sealed, '--passphrase-file', secret)).out).toMatch(/, encrypted$/);
    const without = await call(checkBackup, '', sealed);
    expect([without.status, without.err]).toEqual([1, expect.stringMatching(/is encrypted\.\n.*--passphrase-file/)]);
    vi.stubEnv('RUNGWISE_BACKUP_PASSPHRASE_FILE', secret);
    expect((await call(checkBackup, '', sealed)).status).toBe(0);
    expect((await call(restore, target.url, sealed)).status).toBe(0);
    await writeFile(secret, 'short\n');
    const short = await call(backup, source.url, join(folder, 'short.backup'));
    expect([short.status, short.err]).toEqual([2, expect.stringContaining('shorter than 12 letters')]);
  }, 120_000);

  it('refuse what they do not understand, and say what stands in the way', async () => {
    for (const command of [backup, checkBackup, restore])
      for (const args of [[], ['a', 'b'], ['--what', 'a']]) expect((await call(command, source.url, ...args)).status).toBe(2);
    for (const command of [backup, checkBackup]) expect((await call(command, source.url, 'a', '--replace')).status).toBe(2);
    expect((await call(backup, source.url, file)).err).toMatch(/There is a file .* already\.\nName another/);
    const people = await call(restore, source.url, file);
    expect([people.status, people.err]).toEqual([2, expect.stringMatching(/The database holds people already\.\nSay --replace/)]);
    expect((await call(restore, target.url, join(folder, 'no.backup'))).err).toMatch(/There is no file .*no\.backup/);
  });

  it('removes people again who were removed since, by the lists beside the backups and by the database that is replaced', async () => {
    const people = await ask<{ id: number; mark: string }>(source.url, 'SELECT id, mark FROM person ORDER BY id');
    const [first, second, third] = people as [(typeof people)[0], (typeof people)[0], (typeof people)[0]];
    await migrate(target.url, migrationsFolder);
    await ask(target.url, `INSERT INTO removed_person VALUES ($1, '2026-11-03T10:00:00Z', 'self')`, [third.mark]);
    const beside = await mkdtemp(join(tmpdir(), 'rungwise-stick-'));
    try {
      const copy = join(beside, 'copied.backup');
      await writeFile(copy, await readFile(file));
      await writeFile(join(beside, 'removed-people.txt'), `${first.mark} 2026-11-01\nhalf a li`);
      await call(backup, source.url, join(folder, 'kept.backup'));
      vi.stubEnv('RUNGWISE_BACKUPS', folder);
      await writeFile(join(folder, 'removed-people.txt'), `${second.mark} 2026-11-02\n`);
      const { status, out } = await call(restore, target.url, copy);
      expect([status, out]).toEqual([0, expect.stringContaining('People removed again, who had been removed since: 3')]);
      const gone = [first.id, second.id, third.id];
      const left = await ask<{ id: number }>(target.url, 'SELECT id FROM person ORDER BY id');
      expect(left.map(({ id }) => id)).toEqual(people.map(({ id }) => id).filter((id) => !gone.includes(id)));
      expect(await ask(target.url, 'SELECT FROM answer WHERE person_id = ANY ($1)', [gone])).toEqual([]);
      const marks = await ask<{ mark: string }>(
        target.url,
        `SELECT mark, why, to_char(removed_at, 'YYYY-MM-DD') AS day FROM removed_person ORDER BY day`,
      );
      expect(marks).toEqual([
        { mark: first.mark, why: 'staff', day: '2026-11-01' },
        { mark: second.mark, why: 'staff', day: '2026-11-02' },
        { mark: third.mark, why: 'self', day: '2026-11-03' },
      ]);
    } finally {
      await rm(join(folder, 'removed-people.txt'), { force: true });
      await rm(beside, { recursive: true });
    }
  });
});

/** A way to the database on which everything stops after so many bytes, both ways together. */
async function stallingAfter(url: string, bytes: number) {
  const { hostname, port } = new URL(url);
  const sockets: Socket[] = [];
  let [passed, stalled] = [0, false];
  let stall: () => void = () => undefined;
  const reached = new Promise<void>((resolve) => (stall = resolve));
  const server = createServer((near) => {
    const far = connect(Number(port), hostname);
    sockets.push(near, far);
    for (const [from, to] of [
      [near, far],
      [far, near],
    ] as const)
      from.on('data', (chunk: Buffer) => {
        if (stalled) return;
        to.write(chunk.subarray(0, bytes - passed));
        passed += chunk.length;
        if (passed < bytes) return;
        stalled = true;
        stall();
      });
    for (const socket of [near, far]) socket.on('error', () => undefined);
    near.on('close', () => far.destroy());
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const through = new URL(url);
  through.port = String((server.address() as AddressInfo).port);
  return {
    url: through.href,
    reached,
    passed: () => passed,
    close: () => {
      for (const socket of sockets) socket.destroy();
      server.close();
    },
  };
}

function child(url: string, ...args: string[]) {
  const env = { ...process.env, DATABASE_URL: url, RUNGWISE_BACKUPS: join(folder, 'kept') };
  const started = spawn(process.execPath, [join(projectFolder, 'dist', 'src', 'cli', 'main.js'), ...args], { env, stdio: 'ignore' });
  const ended = new Promise<number | null>((resolve) => started.once('exit', (code) => resolve(code)));
  return { kill: () => started.kill('SIGKILL'), ended };
}

describe('a process that is killed', () => {
  it('half way through a restore leaves the database as it was', async () => {
    await migrate(target.url, migrationsFolder);
    await ask(target.url, `INSERT INTO installation (cookie_secret, phrase_salt) VALUES ('mine', 'mine')`);
    const was = await contents(target.url);
    const other = await emptyDatabase();
    const whole = await stallingAfter(other.url, Number.MAX_SAFE_INTEGER);
    expect(await child(whole.url, 'restore', file).ended).toBe(0);
    whole.close();
    await other.drop();
    for (const share of [0.05, 0.5, 0.97]) {
      const way = await stallingAfter(target.url, Math.floor(whole.passed() * share));
      const restoring = child(way.url, 'restore', file);
      await way.reached;
      restoring.kill();
      await restoring.ended;
      way.close();
      await expect
        .poll(
          () =>
            ask(target.url, `SELECT FROM pg_stat_activity WHERE application_name = 'rungwise restore' AND datname = current_database()`),
          { timeout: 10_000 },
        )
        .toEqual([]);
      expect(await contents(target.url), `killed at ${share}`).toEqual(was);
    }
    expect((await call(restore, target.url, file)).status).toBe(0);
    expect(await kept(target.url)).toEqual(await kept(source.url));
  }, 300_000);

  it('half way through a backup leaves no file of that name', async () => {
    const place = await mkdtemp(join(folder, 'killed-'));
    const whole = await stallingAfter(source.url, Number.MAX_SAFE_INTEGER);
    expect(await child(whole.url, 'backup', join(folder, 'measured.backup')).ended).toBe(0);
    whole.close();
    for (const share of [0.2, 0.9]) {
      const way = await stallingAfter(source.url, Math.floor(whole.passed() * share));
      const writing = child(way.url, 'backup', join(place, 'x.backup'));
      await way.reached;
      writing.kill();
      await writing.ended;
      way.close();
    }
    expect((await readdir(place)).filter((name) => !name.startsWith('.'))).toEqual([]);
  }, 120_000);
});

describe('the embedded database', () => {
  it('is started for a restore and for a backup, and stopped again', async () => {
    const home = await temporaryFolder();
    try {
      const data = join(home.folder, 'data');
      vi.stubEnv('RUNGWISE_DATA', data);
      vi.stubEnv('RUNGWISE_BACKUPS', '');
      expect((await call(restore, '', file)).status).toBe(0);
      const again = join(home.folder, 'again.backup');
      const { status, out } = await call(backup, '', again, '--json');
      expect([status, (JSON.parse(out) as { rows: Record<string, number> }).rows['answer']]).toEqual([0, 6000]);
      expect(await readdir(join(data, 'postgres', 'cluster'))).not.toContain('postmaster.pid');
      expect((await call(restore, '', again)).err).toMatch(/The database holds people already/);
      const replaced = await call(restore, '', again, '--replace');
      expect([replaced.status, replaced.out]).toEqual([0, expect.stringContaining(join(data, 'backups', 'before-restore-'))]);
    } finally {
      await home.remove();
    }
  }, 120_000);
});
