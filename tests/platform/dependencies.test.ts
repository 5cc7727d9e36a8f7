import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { createRequire } from 'node:module';
import { promisify } from 'node:util';
import { Ajv } from 'ajv';
import { describe, expect, it } from 'vitest';
import { projectFolder } from '../../src/platform/project-folder.js';
import { faultsOf, isAllowed, toldOn, type Lock, type Manifest } from '../support/parts.js';

const read = (name: string): Promise<string> => readFile(join(projectFolder, name), 'utf8');
const manifest = JSON.parse(await read('package.json')) as Manifest;
const lock = JSON.parse(await read('package-lock.json')) as Lock;
const told = toldOn(await read('docs/dependencies.md'));

/** The real ones with something changed in a copy. */
function faultsAfter(change: (copy: { manifest: Manifest; lock: Lock }) => void): string[] {
  const copy = structuredClone({ manifest, lock });
  change(copy);
  return faultsOf(copy.manifest, copy.lock, told);
}

describe('The packages that are used', () => {
  it('stand on the page with reason and licence, have exact versions, check sums and allowed licences, and run no scripts', () => {
    expect(told.runs.size).toBeGreaterThan(20);
    expect(faultsOf(manifest, lock, told)).toEqual([]);
  });

  const at = 'node_modules/made-up';
  const plain = { version: '1.0.0', license: 'MIT', integrity: 'sha512-x' };
  it.each<[string, Parameters<typeof faultsAfter>[0], string]>([
    ['is not told of', (c) => (c.manifest.dependencies['made-up'] = '1.0.0'), 'made-up is not on the page (runs)'],
    ['is gone', (c) => delete c.manifest.dependencies['zod'], 'zod is on the page (runs) and not in package.json'],
    ['may be newer', (c) => (c.manifest.dependencies['zod'] = '^4.6.7'), 'zod ^4.6.7 is no exact version'],
    ['has no check sum', (c) => (c.lock.packages[at] = { version: '1.0.0', license: 'MIT' }), 'made-up has no check sum'],
    ['has another licence', (c) => (c.lock.packages[at] = { ...plain, license: 'AGPL-3.0-only' }), 'made-up has the licence AGPL-3.0-only'],
    ['has none', (c) => (c.lock.packages[at] = { version: '1.0.0', integrity: 'sha512-x' }), 'made-up has the licence undefined'],
    [
      'runs a script',
      (c) => (c.lock.packages[at] = { ...plain, hasInstallScript: true }),
      'made-up would run a script when it is installed',
    ],
    ['may run its script', (c) => (c.manifest.allowScripts['prisma'] = true), 'prisma would run a script when it is installed'],
    [
      'names its place',
      (c) => (c.lock.packages[at] = { ...plain, resolved: 'https://club.example/x.tgz' }),
      'made-up says where it came from',
    ],
    ['is not the one that overrides', (c) => (c.manifest.overrides['zod'] = '1.0.0'), 'zod is overridden, and another version is there'],
    ['is for tests alone', (c) => (c.lock.packages[at] = { ...plain, license: 'MPL-2.0' }), 'made-up has the licence MPL-2.0'],
  ])('are refused when one of them %s', (_what, change, fault) => {
    expect(faultsAfter(change)).toEqual([fault]);
  });

  it('may offer a choice of licences, of which one must be allowed; of several together all must', () => {
    expect(isAllowed('(GPL-3.0-only OR MIT)', ['MIT'])).toBe(true);
    expect(isAllowed('MIT and ISC', ['MIT', 'ISC'])).toBe(true);
    expect(isAllowed('(MIT AND GPL-3.0-only)', ['MIT'])).toBe(false);
  });
});

it('The list of parts is a CycloneDX 1.5 document that holds every package for running, on any system, with licence and SHA-512', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'rungwise-parts-'));
  try {
    const file = join(folder, 'parts.cdx.json');
    await promisify(execFile)(process.execPath, [join(projectFolder, 'scripts', 'parts.mjs'), file]);
    const list = JSON.parse(await readFile(file, 'utf8')) as Parts;
    expect(await againstSchema(list)).toEqual([]);
    expect(list).toMatchObject({ bomFormat: 'CycloneDX', specVersion: '1.5', metadata: { component: { name: 'rungwise' } } });
    const expected = Object.entries(lock.packages).filter(([path, { dev }]) => path !== '' && !dev);
    const purls = expected.map(([path, { version }]) => purl(path, version ?? ''));
    expect(new Set(list.components.map((part) => part.purl))).toEqual(new Set(purls));
    expect(list.components.filter(({ hashes }) => hashes?.[0]?.alg !== 'SHA-512')).toEqual([]);
    expect(list.components.filter(({ licenses }) => licenses === undefined).map(({ name }) => name)).toEqual(['seq-queue']);
  } finally {
    await rm(folder, { recursive: true });
  }
}, 60_000);

interface Parts {
  components: { name: string; purl: string; hashes?: { alg: string }[]; licenses?: unknown[] }[];
}

/** As the standard for package addresses has it: the sign of a scope is written %40. */
const purl = (path: string, version: string): string =>
  `pkg:npm/${path.slice(path.lastIndexOf('node_modules/') + 13).replace('@', '%40')}@${version}`;

/** Against the schema as its keepers publish it. Formats (dates, addresses) are left out, since those take packages of their own. */
async function againstSchema(list: object): Promise<unknown[]> {
  const folder = join(dirname(createRequire(import.meta.url).resolve('@cyclonedx/cyclonedx-library/package.json')), 'res', 'schema');
  const schema = async (name: string) => JSON.parse(await readFile(join(folder, `${name}.SNAPSHOT.schema.json`), 'utf8')) as object;
  const ajv = new Ajv({ strict: false, validateFormats: false, allErrors: true });
  for (const name of ['spdx', 'jsf-0.82']) ajv.addSchema(await schema(name), `http://cyclonedx.org/schema/${name}.SNAPSHOT.schema.json`);
  const validate = ajv.compile(await schema('bom-1.5'));
  validate(list);
  return validate.errors ?? [];
}
