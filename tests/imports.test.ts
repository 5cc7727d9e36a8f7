import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { cruise, type ICruiseResult } from 'dependency-cruiser';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { projectFolder } from '../src/platform/project-folder.js';

async function cruised(baseDir: string): Promise<ICruiseResult> {
  // By a name in a variable, since the rules are plain JavaScript without types.
  const rules = join(projectFolder, '.dependency-cruiser.mjs');
  const { options, forbidden } = ((await import(rules)) as { default: { options: object; forbidden: [] } }).default;
  const { output } = await cruise(
    ['src', 'shared'],
    { ...options, baseDir, ruleSet: { forbidden }, validate: true } as never,
    undefined,
    undefined,
  );
  return output as ICruiseResult;
}

/** Bad imports, one for each rule: file, what it imports, the rule that must say no. */
const planted: [string, string, string][] = [
  ['shared/a.ts', '../src/core/b.js', 'shared-stands-alone'],
  ['src/core/c.ts', '../platform/d.js', 'core-looks-down'],
  ['src/core/e.ts', 'node:fs', 'core-is-pure'],
  ['src/core/f.ts', 'handlebars', 'core-packages'],
  ['src/core/g.ts', 'ts-fsrs', 'scheduler-in-one-file'],
  ['src/platform/h.ts', '../study/index.js', 'platform-looks-down'],
  ['src/study/i.ts', '../web/j.js', 'features-look-down'],
  ['src/web/k.ts', '../cli/l.js', 'doors-apart'],
  ['src/browser/m.ts', '../core/b.js', 'browser-uses-shared'],
  ['src/accounts/n.ts', '../study/index.js', 'feature-order-accounts'],
  ['src/study/o.ts', '../accounts/store.js', 'by-the-front-door'],
  ['src/study/service.ts', 'fastify', 'fastify-at-the-door'],
  ['src/study/p.ts', '@prisma/client', 'prisma-below'],
  ['src/study/pages.ts', './store.js', 'pages-are-plain'],
  ['src/study/routes.ts', './store.js', 'routes-never-store'],
  ['src/accounts/service.ts', './pages.js', 'service-below-pages'],
  ['src/study/store.ts', './q.js', 'stores-only-query'],
  ['src/core/r.ts', './s.js', 'no-circular'],
  ['src/core/t.ts', './nowhere.js', 'resolvable'],
];
/** Good imports beside them, so that the bad ones lead somewhere. */
const plain = [
  'src/core/b.ts',
  'src/platform/d.ts',
  'src/study/index.ts',
  'src/web/j.ts',
  'src/cli/l.ts',
  'src/accounts/store.ts',
  'src/accounts/pages.ts',
  'src/study/q.ts',
];

describe('the rules of imports', () => {
  let folder: string;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'rungwise-imports-'));
    await symlink(join(projectFolder, 'node_modules'), join(folder, 'node_modules'));
    await writeFile(
      join(folder, 'package.json'),
      '{ "type": "module", "dependencies": { "handlebars": "*", "fastify": "*", "ts-fsrs": "*", "@prisma/client": "*" } }',
    );
    await writeFile(join(folder, 'tsconfig.json'), '{ "compilerOptions": { "module": "NodeNext", "target": "ES2022" } }');
    for (const path of plain) await put(path, 'export const x = 1;\n');
    await put('src/core/s.ts', "import * as r from './r.js';\nexport const s = r;\n");
    for (const [path, imported] of planted) await put(path, `import * as x from '${imported}';\nexport const y = x;\n`);
  });
  afterAll(() => rm(folder, { recursive: true, force: true }));

  async function put(path: string, text: string): Promise<void> {
    await mkdir(dirname(join(folder, path)), { recursive: true });
    await writeFile(join(folder, path), text);
  }

  it('hold in the whole project, and the reader saw the whole project', async () => {
    const { summary } = await cruised(projectFolder);
    expect(summary.totalCruised).toBeGreaterThan(80);
    expect(summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} -> ${to}`)).toEqual([]);
  });

  it('each catch the import that is planted for it', async () => {
    const { summary } = await cruised(folder);
    const caught = new Set(summary.violations.map(({ rule, from }) => `${rule.name} ${from}`));
    expect(planted.filter(([path, , rule]) => !caught.has(`${rule} ${path}`))).toEqual([]);
  });
});
