import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { run as add } from '../../src/cli/add.js';
import { run as newPack } from '../../src/cli/new-pack.js';
import { readPackFolder } from '../../src/packs/index.js';
import { childrenRunFromSource } from '../packs/source-child.js';
import { testApp, type TestApp } from '../support/app.js';

/** From an empty folder to a pack in the bank, by the commands that a club uses. */

type Command = typeof add;
async function call(command: Command, ...args: string[]): Promise<{ status: number; out: string; err: string }> {
  const [out, err]: [string[], string[]] = [[], []];
  const status = await command(args, { out: (text) => void out.push(text), err: (text) => void err.push(text) });
  return { status, out: out.join('\n'), err: err.join('\n') };
}

let folder: string;
beforeEach(async () => {
  folder = join(await mkdtemp(join(tmpdir(), 'rungwise-new-')), 'Nether Wobbling!');
});
afterEach(() => rm(join(folder, '..'), { recursive: true, force: true }));

describe('rungwise new-pack', () => {
  it('writes a pack in which there is nothing to mend, under an id made from the name of the folder', async () => {
    expect((await call(newPack, folder)).status).toBe(0);
    const { pack, findings } = await readPackFolder(folder);
    expect(findings).toEqual([]);
    expect(pack?.head.id).toBe('nether-wobbling');
    expect(new Set(pack?.questions.map(({ kind }) => kind))).toEqual(new Set(['single', 'several', 'order', 'pairs', 'place']));
    expect(pack?.families).toHaveLength(1);
    expect(pack?.blueprints).toHaveLength(1);
  });

  it('touches no folder that holds something', async () => {
    await call(newPack, folder);
    await writeFile(join(folder, 'pack.yaml'), 'mine');
    const { status, err } = await call(newPack, folder);
    expect([status, err]).toEqual([2, expect.stringContaining('is not empty')]);
    expect(await readFile(join(folder, 'pack.yaml'), 'utf8')).toBe('mine');
  });

  it('says how it is used when it is misused', async () => {
    for (const args of [[], ['a', 'b'], ['--json']]) expect((await call(newPack, ...args)).status).toBe(2);
  });
});

describe('rungwise add', () => {
  childrenRunFromSource();
  let app: TestApp;
  beforeAll(async () => {
    app = await testApp();
    vi.stubEnv('DATABASE_URL', app.url);
  });
  afterAll(async () => {
    vi.unstubAllEnvs();
    await app.close();
  });
  const there = () => app.rows<{ slug: string; origin: string }>("SELECT slug, origin FROM pack WHERE slug <> 'small'");

  it('shows with --dry-run what it would do, then does it, then finds it done', async () => {
    await call(newPack, folder);
    const dry = await call(add, folder, '--dry-run');
    expect([dry.status, dry.out]).toEqual([0, expect.stringContaining('nether-wobbling 1.0.0 would be added.')]);
    expect(await there()).toEqual([]);
    const { status, out, err } = await call(add, folder, '--json');
    expect(status).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ id: 'nether-wobbling', state: 'new', before: null, retired: [] });
    expect(err).toMatch(/Reading and checking[\s\S]*Opening the database/);
    expect(await there()).toEqual([{ slug: 'nether-wobbling', origin: 'added' }]);
    expect((await call(add, folder)).out).toContain('in the bank already');
  });

  it('changes nothing for a pack with errors, and names them', async () => {
    await call(newPack, folder);
    await writeFile(join(folder, 'topics.yaml'), 'topics: 3\n');
    const { status, err } = await call(add, folder);
    expect([status, err]).toEqual([1, expect.stringContaining('topics.yaml:1:9')]);
  });

  it('takes no id that comes with the server', async () => {
    await call(newPack, folder);
    const file = join(folder, 'pack.yaml');
    await writeFile(file, (await readFile(file, 'utf8')).replace(/id: .*/, 'id: small'));
    const { status, err } = await call(add, folder);
    expect([status, err]).toEqual([1, expect.stringContaining('comes with the server')]);
  });

  it('answers 2 where there is nothing of that name, or the command is mistyped', async () => {
    for (const args of [[join(folder, 'nowhere')], [], ['--what'], ['a', 'b']]) expect((await call(add, ...args)).status).toBe(2);
  });
});
