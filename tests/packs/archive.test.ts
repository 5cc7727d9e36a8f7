import { mkdtemp, readFile, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { randomFrom } from '../../src/core/random.js';
import { unpack } from '../../src/packs/archive.js';
import { examinePath } from '../../src/packs/index.js';
import { zip, type ZipEntry } from '../support/zip.js';
import { childrenRunFromSource } from './source-child.js';
import { goodPack } from './temporary-pack.js';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'rungwise-archive-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const rules = async (entries: readonly ZipEntry[]): Promise<string[]> => (await unpack(zip(entries), folder)).map(({ rule }) => rule);
const inside = async (): Promise<string[]> =>
  (await readdir(folder, { recursive: true, withFileTypes: true }))
    .filter((entry) => entry.isFile())
    .map(({ name }) => name)
    .sort();

async function goodEntries(outer = ''): Promise<ZipEntry[]> {
  const names = (await readdir(goodPack, { recursive: true, withFileTypes: true })).filter((entry) => entry.isFile());
  return Promise.all(
    names.map(async (entry) => {
      const path = join(entry.parentPath, entry.name);
      return { name: outer + path.slice(goodPack.length + 1).replaceAll('\\', '/'), content: await readFile(path) };
    }),
  );
}

describe('an archive', () => {
  it('is unpacked with its folders, and only what a pack is read from', async () => {
    const entries = [
      ...(await goodEntries()),
      { name: 'notes.docx', content: 'x' },
      { name: '__MACOSX/._pack.yaml', content: 'x' },
      { name: '.git/x.yaml', content: 'x' },
    ];
    expect(await rules(entries)).toEqual([]);
    expect(await inside()).toEqual(
      (await goodEntries())
        .map(({ name }) => basename(name))
        .filter((name) => name !== 'LICENSE')
        .sort(),
    );
  });

  it('may hold the pack in one outer folder', async () => {
    expect(await rules(await goodEntries('my-club/'))).toEqual([]);
    expect(await readdir(folder)).toContain('pack.yaml');
  });

  it.each<[string, ZipEntry[], string]>([
    ['a name that climbs out', [{ name: '../../etc/x.yaml', content: 'x' }], 'archive-unreadable'],
    ['an absolute name', [{ name: '/etc/x.yaml', content: 'x' }], 'archive-unreadable'],
    ['a name with a backslash', [{ name: '..\\x.yaml', content: 'x' }], 'archive-unreadable'],
    ['a link', [{ name: 'x.yaml', content: '/etc/passwd', attributes: 0o120777 * 65536 }], 'archive-entry'],
    ['an encrypted file', [{ name: 'x.yaml', content: 'x', flags: 1 }], 'archive-entry'],
    ['a file that claims to be small', [{ name: 'x.yaml', content: 'x'.repeat(100_000), claims: 10 }], 'archive-unreadable'],
    ['a file over the limit', [{ name: 'x.yaml', content: 'x'.repeat(2_000_001) }], 'archive-entry'],
    [
      'files over the limit together',
      Array.from({ length: 12 }, (_, n) => ({ name: `${n}.yaml`, content: 'x'.repeat(1_999_999) })),
      'folder-size',
    ],
    ['too many entries', Array.from({ length: 501 }, (_, n) => ({ name: `${n}.yaml`, content: '' })), 'archive-entries'],
    ...(
      [
        ['two files of one name', 'x.yaml', 'x.yaml'],
        ['two names that differ by capitals', 'questions/LA.yaml', 'Questions/la.yaml'],
        // é as one letter, and as e with an accent after it: one file on some computers (Unicode, UAX 15).
        ['two ways to write one name', 'caf\u00e9.yaml', 'cafe\u0301.yaml'],
      ] as const
    ).map(([what, one, other]): [string, ZipEntry[], string] => [
      what,
      [
        { name: one, content: 'a' },
        { name: other, content: 'b' },
      ],
      'archive-entry',
    ]),
    ['a file that is not what was packed', [{ name: 'x.yaml', content: 'x', sum: 1 }], 'archive-entry'],
    ['a device', [{ name: 'x.yaml', content: '', attributes: 0o020666 * 65536 }], 'archive-entry'],
    ...[
      'CON.yaml',
      'aux/x.yaml',
      'Lpt1.yaml',
      'x./y.yaml',
      'a /y.yaml',
      'a//y.yaml',
      'x\u0007.yaml',
      'a|b.yaml',
      `${'x'.repeat(96)}.yaml`,
    ].map((name): [string, ZipEntry[], string] => [
      `the name ${JSON.stringify(name)}`,
      [
        { name: 'pack.yaml', content: 'x' },
        { name, content: 'x' },
      ],
      'archive-entry',
    ]),
  ])('is refused for %s', async (_what, entries, rule) => {
    expect(await rules(entries)).toContain(rule);
    expect(await readdir(tmpdir())).not.toContain('x.yaml');
  });

  it('writes nothing through a folder that is a link', async () => {
    const entries = [
      { name: 'out', content: tmpdir(), attributes: 0o120777 * 65536 },
      { name: 'out/through-a-link.yaml', content: 'x' },
    ];
    await rules(entries);
    expect(await readdir(tmpdir())).not.toContain('through-a-link.yaml');
  });

  it('with one bad name among good ones is refused as a whole', async () => {
    const path = join(folder, 'pack.zip');
    await writeFile(path, zip([...(await goodEntries()), { name: 'nul.yaml', content: 'x' }]));
    expect((await examinePath(path)).pack).toBeNull();
  });

  it('is refused over 5 MB without being looked at', async () => {
    expect((await unpack(Buffer.alloc(5_000_001), folder))[0]?.rule).toBe('archive-size');
  });

  it('is never more than refused, whatever is broken in it', async () => {
    const sound = zip(await goodEntries());
    const random = randomFrom('archive');
    for (let tried = 0; tried < 200; tried += 1) {
      const broken = Buffer.from(sound);
      for (let count = random.below(20) + 1; count > 0; count -= 1) broken[random.below(broken.length)] = random.below(256);
      const target = join(folder, String(tried));
      const findings = await unpack(broken.subarray(0, random.below(4) === 0 ? random.below(broken.length) : broken.length), target);
      for (const { message } of findings) expect(message).not.toContain(folder);
    }
  });
});

describe('a pack from outside', () => {
  childrenRunFromSource();

  it('is the same from an archive as from a folder', async () => {
    const path = join(folder, 'pack.zip');
    await writeFile(path, zip(await goodEntries('club/')));
    const [archived, plain] = await Promise.all([examinePath(path), examinePath(goodPack)]);
    expect(archived.report.findings).toEqual([]);
    expect(archived.pack).toEqual(plain.pack);
    expect(plain.pack?.head.id).toBe('wobbling-basics');
  });

  it('is not there when there are errors', async () => {
    const path = join(folder, 'pack.zip');
    await writeFile(path, zip([{ name: 'pack.yaml', content: 'pack: 3\n' }]));
    const { report, pack } = await examinePath(path);
    expect(pack).toBeNull();
    expect(report.findings[0]).toMatchObject({ level: 'error', file: 'pack.yaml', line: 1 });
  });
});
