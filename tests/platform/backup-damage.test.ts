import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { gzipSync } from 'node:zlib';
import { createHash } from 'node:crypto';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { randomFrom } from '../../src/core/random.js';
import { checkBackup, restoreBackup, writeBackup } from '../../src/platform/backup/index.js';
import { changed, contents, entriesIn, fillByHand, migrationsFolder, program, writeEntries, type TarEntry } from '../support/backups.js';
import { emptyDatabase, freshDatabase, type TestDatabase } from '../support/database.js';

/** A file that is damaged, foreign, newer or made to harm is refused in words, and the database stays as it was. */

const now = new Date('2026-11-28T02:30:00Z');
const passphrase = 'nether wobbling brass kettle seven';
let folder: string;
let target: TestDatabase;
let was: Record<string, string[]>;
let plain: Buffer;
let sealed: Buffer;
let entries: TarEntry[];

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'rungwise-damage-'));
  const source = await freshDatabase();
  await fillByHand(source.url, 300);
  const write = (file: string, word?: string) =>
    writeBackup({ url: source.url, file: join(folder, file), passphrase: word, program, migrationsFolder, now });
  await write('plain.backup');
  await write('sealed.backup', passphrase);
  await source.drop();
  plain = await readFile(join(folder, 'plain.backup'));
  sealed = await readFile(join(folder, 'sealed.backup'));
  entries = await entriesIn(join(folder, 'plain.backup'));
  target = await freshDatabase();
  was = await contents(target.url);
});
afterAll(async () => {
  await target.drop();
  await rm(folder, { recursive: true });
});

const check = (file: string) => checkBackup({ file, passphrase, migrationsFolder });
const restore = (file: string, url = target.url) =>
  restoreBackup({ url, file, passphrase, migrationsFolder, program, now, removed: [], before: { folder } });

/** What a file is refused with, by the check and by the restore alike. */
async function refusal(bytes: Buffer): Promise<string> {
  const file = join(folder, 'changed.backup');
  await writeFile(file, bytes);
  return await refusalOf(file);
}

async function refusalOf(file: string): Promise<string> {
  const [one, other] = [await check(file).catch(said), await restore(file).catch(said)];
  expect(other).toBe(one);
  return String(one);
}

const said = (error: unknown): string => {
  const { name, message, advice } = error as { name: string; message: string; advice?: string };
  if (name !== 'SetUpError' || !advice) throw error;
  return message;
};

/** The file made of the entries with a sound sum at its end, and what it is refused with. */
async function refusalOfEntries(some: readonly TarEntry[]): Promise<string> {
  const file = join(folder, 'made.backup');
  await writeEntries(file, some);
  return await refusalOf(file);
}

const json = (change: (value: Record<string, object>) => unknown) => (data: Buffer) =>
  Buffer.from(JSON.stringify(change(JSON.parse(data.toString()) as Record<string, object>)));

/** `sums.json` made to agree with what the entries hold now. */
function resummed(some: readonly TarEntry[], rows: Record<string, number> = {}): TarEntry[] {
  const held = some.filter(({ header }) => header.name !== 'sums.json');
  const list = held.map(({ header, data }) => ({
    name: header.name,
    bytes: data.length,
    sha256: createHash('sha256').update(data).digest('hex'),
  }));
  return changed(
    some,
    'sums.json',
    json((sums) => ({ rows: { ...(sums['rows'] as object), ...rows }, entries: list })),
  );
}

const answers = 'tables/answer/00001.copy.gz';

describe('the file as it was written', () => {
  it('is sound, in both kinds, and so are its entries put together again by hand', async () => {
    await writeEntries(join(folder, 'again.backup'), resummed(entries));
    for (const name of ['plain.backup', 'sealed.backup', 'again.backup'])
      expect((await check(join(folder, name))).rows['answer']).toBe(300);
  });
});

describe('a damaged file', () => {
  it('is refused wherever one byte of it is another', async () => {
    const random = randomFrom('flip');
    const places = Array.from({ length: 40 }, () => random.below(plain.length));
    // And where a tar holds nothing that its readers look at: the last byte of each entry's check sum, and the padding behind it.
    let start = 0;
    for (const { data } of entries) {
      places.push(start + 155);
      start += 512 + Math.ceil(data.length / 512) * 512;
      if (data.length % 512 > 0) places.push(start - 1);
    }
    for (const at of places) {
      const bytes = Buffer.from(plain);
      bytes[at] = (bytes[at] as number) ^ (1 << random.below(8));
      expect(await refusal(bytes), `byte ${at}`).toMatch(
        /is damaged: |is not a backup of Rungwise|was written by a newer Rungwise|newer than this program|was changed after/,
      );
    }
    expect(await contents(target.url)).toEqual(was);
  }, 120_000);

  it('is refused wherever one byte of an encrypted one is another', async () => {
    const random = randomFrom('sealed');
    for (let time = 0; time < 8; time += 1) {
      const bytes = Buffer.from(sealed);
      // The first places lie in the header, the rest anywhere.
      const at = time < 3 ? random.below(180) : random.below(bytes.length);
      bytes[at] = (bytes[at] as number) ^ (1 << random.below(8));
      const file = join(folder, 'changed.backup');
      await writeFile(file, bytes);
      await expect(check(file), `byte ${at}`).rejects.toMatchObject({ name: 'SetUpError' });
    }
  }, 120_000);

  it('is refused wherever it is cut, and when something is added', async () => {
    const random = randomFrom('cut');
    for (let time = 0; time < 20; time += 1) {
      const at = random.below(plain.length);
      expect(await refusal(plain.subarray(0, at)), `cut at ${at}`).toMatch(/is damaged: |is not a backup of Rungwise/);
    }
    for (const at of [sealed.length - 1, sealed.length - 70_000, 300]) {
      const file = join(folder, 'changed.backup');
      await writeFile(file, sealed.subarray(0, Math.max(at, 230)));
      await expect(check(file)).rejects.toMatchObject({ name: 'SetUpError' });
    }
    for (const more of [Buffer.from('x'), Buffer.alloc(512), plain])
      expect(await refusal(Buffer.concat([plain, more]))).toMatch(/is damaged: /);
    expect(await contents(target.url)).toEqual(was);
  }, 120_000);

  it('is told by its sums even when whoever changed it made the last sum right', async () => {
    expect(await refusalOfEntries(changed(entries, answers, (data) => Buffer.concat([data.subarray(0, -1), Buffer.from([7])])))).toMatch(
      /is damaged/,
    );
    const other = gzipSync(Buffer.from('1\t2\n'));
    expect(await refusalOfEntries(changed(entries, answers, () => other))).toMatch(
      /tables\/answer\/00001\.copy\.gz in it does not agree with its sum/,
    );
    expect(await refusalOfEntries(resummed(entries, { answer: 299 }))).toMatch(/the rows of answer are not as many as were counted/);
    expect(await refusalOfEntries(entries.filter(({ header }) => header.name !== answers))).toMatch(/a part of it is missing/);
    expect(await refusalOfEntries(entries.slice(0, -1))).toMatch(/its end is missing/);
    expect(await refusalOfEntries([...entries, entries[1] as TarEntry])).toMatch(/comes after its end/);
    expect(await refusalOfEntries([...entries.slice(0, 2), entries[1] as TarEntry, ...entries.slice(2)])).toMatch(
      /does not stand where it belongs/,
    );
  });
});

describe('a foreign file', () => {
  it('is refused in words', async () => {
    expect(await refusal(Buffer.alloc(0))).toMatch(/is not a backup of Rungwise/);
    expect(await refusal(Buffer.from('PK\x03\x04 a ZIP file'))).toMatch(/is not a backup of Rungwise/);
    expect(await refusal(Buffer.from('age-encryption.org/v1\n-> X25519 abc\n'))).toMatch(/its encryption is not whole/);
    expect(await refusal(Buffer.concat([Buffer.from('age-encryption.org/v1\n'), Buffer.alloc(9_000_000, 65)]))).toMatch(
      /its encryption is not whole/,
    );
    await expect(check(join(folder, 'nothing.backup'))).rejects.toThrow(/There is no file/);
    await expect(check(folder)).rejects.toThrow(/is not a file/);
  });

  it('of a newer format, or of a program with other migrations, is refused with what to do', async () => {
    expect(
      await refusalOfEntries(
        changed(
          entries,
          'about.json',
          json((about) => ({ ...about, formatNumber: 2, more: true })),
        ),
      ),
    ).toMatch(/was written by a newer Rungwise: its format is number 2, and this program reads 1/);
    const withMigrations = (change: (list: { name: string; checksum: string }[]) => unknown) =>
      refusalOfEntries(
        changed(
          entries,
          'about.json',
          json((about) => ({ ...about, migrations: change(about['migrations'] as { name: string; checksum: string }[]) })),
        ),
      );
    expect(await withMigrations((list) => [...list, { name: '0999_later', checksum: 'a'.repeat(64) }])).toMatch(
      /The backup is newer than this program: it has 0999_later/,
    );
    expect(await withMigrations((list) => list.map((each) => ({ ...each, checksum: 'a'.repeat(64) })))).toMatch(
      /was changed after the backup took it/,
    );
    expect(await withMigrations((list) => list.slice(1))).toMatch(/comes before/);
  });
});

describe('a file that is made to harm', () => {
  const add = (header: TarEntry['header'], data = Buffer.from('x')): TarEntry[] => [
    ...entries.slice(0, 2),
    { header, data },
    ...entries.slice(2),
  ];

  it.each([
    [
      'a symbolic link',
      { name: 'tables/answer/00002.copy.gz', type: 'symlink', linkname: '/etc/passwd' },
      /is a symlink and not a plain file/,
    ],
    ['a hard link', { name: 'tables/answer/00002.copy.gz', type: 'link', linkname: 'about.json' }, /is a link and not a plain file/],
    ['a device', { name: 'tables/answer/00002.copy.gz', type: 'character-device' }, /is a character-device and not a plain file/],
    ['a folder', { name: 'tables/answer', type: 'directory' }, /which no backup does/],
    ['a way out', { name: '../../outside' }, /holds "\.\.\/\.\.\/outside", which no backup does/],
    ['a way out of its folder', { name: 'tables/../../00001.copy.gz' }, /which no backup does/],
    ['a whole path', { name: '/etc/cron.d/x' }, /which no backup does/],
    ['a long name', { name: `tables/${'a'.repeat(3000)}/00001.copy.gz` }, /which no backup does/],
    ['a table that it does not name', { name: 'tables/elsewhere/00001.copy.gz' }, /does not stand where it belongs/],
    ['a table that is left out', { name: 'tables/session/00001.copy.gz' }, /does not stand where it belongs/],
  ] as const)('with %s in it is refused', async (_, header, why) => {
    expect(await refusalOfEntries(add(header, 'type' in header ? Buffer.alloc(0) : Buffer.from('x')))).toMatch(why);
    expect(await contents(target.url)).toEqual(was);
  });

  it('with parts that are too large, or that unpack to too much, is refused before they fill the memory', async () => {
    expect(await refusalOfEntries(changed(entries, answers, () => Buffer.alloc(2_000_000)))).toMatch(/is larger than any that is written/);
    const bomb = gzipSync(Buffer.alloc(500_000_000, 10), { level: 9 });
    expect(bomb.length).toBeLessThan(1_000_000);
    expect(await refusalOfEntries(resummed(changed(entries, answers, () => bomb)))).toMatch(/unpacks to more than is ever packed/);
    expect(await refusalOfEntries(changed(entries, 'about.json', () => Buffer.alloc(2 ** 20 + 1, 32)))).toMatch(
      /is larger than any that is written/,
    );
  });

  it('whose rows break a rule, or lie about what they are, leaves an empty database empty', async () => {
    const empty = await emptyDatabase();
    const attempt = async (some: readonly TarEntry[]): Promise<string> => {
      const file = join(folder, 'lies.backup');
      await writeEntries(file, some);
      await check(file);
      return String(await restore(file, empty.url).catch(said));
    };
    const copy = (text: string) => () => gzipSync(Buffer.from(text));
    const members = 'tables/class_member/00001.copy.gz';
    try {
      // A class that is not there; text where a number belongs; an end in the middle; a table that the program does not have.
      expect(await attempt(resummed(changed(entries, members, copy('77\t1\t0\t2026-01-01\n')), { class_member: 1 }))).toMatch(
        /class_member: .*foreign key/,
      );
      expect(await attempt(resummed(changed(entries, members, copy('x\t1\t0\t2026-01-01\n')), { class_member: 1 }))).toMatch(
        /class_member: .*invalid input/,
      );
      expect(
        await attempt(resummed(changed(entries, members, copy('1\t1\t0\t2026-01-01\n\\.\n1\t3\t0\t2026-01-01\n')), { class_member: 3 })),
      ).toMatch(/does not fit/);
      const extra = json((about) => ({
        ...about,
        tables: [...(about['tables'] as object[]), { name: 'more', columns: [], leftOut: true }],
      }));
      expect(await attempt(resummed(changed(entries, 'about.json', extra), { more: 0 }))).toMatch(/more \(\) is in one of them only/);
      const record = 'tables/_prisma_migrations/00001.copy.gz';
      expect(await attempt(resummed(changed(entries, record, copy('')), { _prisma_migrations: 0 }))).toMatch(
        /its record of migrations is not the one/,
      );
      await expect.poll(() => contents(empty.url)).toEqual({});
    } finally {
      await empty.drop();
    }
  });
});
