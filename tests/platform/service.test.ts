import { execFile } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { describe, expect, it } from 'vitest';
import { projectFolder } from '../../src/platform/project-folder.js';
import { readSettings } from '../../src/platform/settings.js';

const file = join(projectFolder, 'deploy', 'rungwise.service');
const read = (name: string): Promise<string> => readFile(join(projectFolder, name), 'utf8');
const lines = (await readFile(file, 'utf8')).split('\n').filter((line) => /^[A-Z]\w+=/.test(line));
/** Of a name that stands there more than once, all values. */
const unit = (name: string): string =>
  lines.flatMap((line) => (line.startsWith(`${name}=`) ? [line.slice(name.length + 1)] : [])).join(' ');

const analysis = await promisify(execFile)('systemd-analyze', ['--version']).then(
  () => true,
  () => false,
);

describe('The service of systemd', () => {
  it('waits until what is being sent is finished and the database has written everything down', async () => {
    const request = Number(/requestTimeout: ([\d_]+)/.exec(await read('src/web/app.ts'))?.[1]?.replaceAll('_', '')) / 1000;
    const database = Number(/'stop'.*--timeout=(\d+)/.exec(await read('src/platform/embedded-postgres/index.ts'))?.[1]);
    expect(Number(unit('TimeoutStopSec'))).toBeGreaterThanOrEqual(request + database + 5);
  });

  it('tells the server alone to stop, which then stops its database', () => {
    expect([unit('KillSignal'), unit('KillMode')]).toEqual(['SIGTERM', 'mixed']);
  });

  it('comes back by itself for as long as it takes', () => {
    expect([unit('Restart'), unit('StartLimitIntervalSec'), unit('WantedBy')]).toEqual(['on-failure', '0', 'multi-user.target']);
    expect(Number(unit('RestartSec'))).toBeGreaterThanOrEqual(10);
  });

  it('gives the server settings that it understands, and the one folder that it may write to', () => {
    const pairs = unit('Environment').split(' ');
    const settings = readSettings(Object.fromEntries(pairs.map((pair) => pair.split('=') as [string, string])));
    expect(settings.dataFolder).toBe(`/var/lib/${unit('StateDirectory')}`);
    expect([unit('StateDirectoryMode'), unit('UMask'), unit('ProtectSystem')]).toEqual(['0700', '0077', 'strict']);
  });

  it('starts the program that the build makes, from a folder that the service cannot change', async () => {
    const started = /\/opt\/rungwise\/dist\/(src\/\S+)\.js$/.exec(unit('ExecStart'))?.[1] ?? '';
    await expect(read(`${started}.ts`)).resolves.toContain('SIGTERM');
    expect([unit('User'), unit('NoNewPrivileges'), unit('CapabilityBoundingSet'), unit('ProtectHome')]).toEqual([
      'rungwise',
      'yes',
      '',
      'yes',
    ]);
  });

  it('leaves the server what Node and PostgreSQL cannot do without', () => {
    const names = lines.map((line) => line.split('=')[0]);
    for (const name of ['MemoryDenyWriteExecute', 'PrivateNetwork', 'PrivateIPC', 'RemoveIPC', 'DynamicUser'])
      expect(names).not.toContain(name);
  });

  if (analysis)
    it('is understood by the systemd that is installed here, which finds little that it could still be kept from', async () => {
      const verified = await promisify(execFile)('systemd-analyze', ['verify', file]);
      expect(verified.stdout + verified.stderr).toBe('');
      const { stdout } = await promisify(execFile)('systemd-analyze', ['security', '--offline=true', file]);
      // 0 to 10; systemd calls up to 2 "OK" or better.
      expect(Number(/exposure level[^:]*: ([\d.]+)/.exec(stdout)?.[1])).toBeLessThanOrEqual(2);
    });
});

describe('The page for the old laptop', async () => {
  const page = await read('docs/old-laptop.md');
  const boxes = [...page.matchAll(/^ *```\n([\s\S]*?)^ *```$/gm)].map((found) => found[1] ?? '').join('\n');

  it('gives the pack’s own caution on lithium batteries, word for word', async () => {
    const cautions = await read('question-packs/entry-safety/cautions.yaml');
    const plain = (text: string) => text.replace(/\s+/g, ' ').trim();
    const caution = plain(/id: lithium[\s\S]*?>-\n([\s\S]*?)\n\n/.exec(cautions)?.[1] ?? '');
    expect(caution).toContain('call the fire service');
    expect(plain(page)).toContain(caution);
  });

  it('names only commands, settings and files that there are', async () => {
    const commands = [...boxes.matchAll(/^ *rungwise ([\w-]+) /gm)].map((found) => found[1] ?? '');
    expect(commands.length).toBeGreaterThan(1);
    const known = await read('src/cli/main.ts');
    for (const name of commands) expect(known).toMatch(new RegExp(`^  '?${name}'?: \\{ about`, 'm'));
    const places = (await Promise.all(['src/platform/settings.ts', 'deploy/Caddyfile'].map(read))).join('\n');
    for (const [name] of page.matchAll(/\bRUNGWISE_[A-Z_]+/g)) expect(places).toContain(name);
    for (const [name] of page.matchAll(/\bdeploy\/[\w.-]*\w/g)) await expect(read(name)).resolves.not.toBe('');
  });
});

it('Every link of the pages in docs and of the README to something here leads to something', async () => {
  const index = await read('docs/index.md');
  const pages = ['README.md', 'docs/index.md', ...[...index.matchAll(/\(([\w-]+\.md)\)/g)].map((found) => `docs/${found[1]}`)];
  expect(pages.length).toBeGreaterThan(3);
  for (const name of pages) {
    const links = [...(await read(name)).matchAll(/\]\(([^)#:\s]+)(?:#[^)]*)?\)/g)].map((found) => found[1] ?? '');
    for (const link of links) await expect(readFile(join(projectFolder, name, '..', link)), `${name}: ${link}`).resolves.toBeDefined();
  }
});
