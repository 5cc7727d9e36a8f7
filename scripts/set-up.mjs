// What start, test, check and the commands need before they can work. Each step looks first whether there is anything to do.
import { createHash } from 'node:crypto';
import { mkdir, mkdtemp, readFile, readdir, rename, rm, writeFile } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { readyPackages } from './packages.mjs';
import { projectFolder, runTool, tail } from './processes.mjs';
import { StepError, step } from './steps.mjs';

const dist = join(projectFolder, 'dist');
const generated = join(projectFolder, 'src', 'platform', 'generated');
const leastNode = [20, 19];

function checkNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  if (major > leastNode[0] || (major === leastNode[0] && minor >= leastNode[1])) return process.versions.node;
  throw new StepError(
    `This is Node ${process.versions.node}; Rungwise needs ${leastNode.join('.')} or later.`,
    'Install a newer Node from nodejs.org.',
  );
}

async function filesBelow(folder, wanted) {
  const entries = await readdir(folder, { withFileTypes: true, recursive: true }).catch(() => []);
  return entries.filter((entry) => entry.isFile() && wanted(entry.name)).map((entry) => join(entry.parentPath ?? entry.path, entry.name));
}

async function hashOf(paths) {
  const hash = createHash('sha256').update(process.versions.node);
  const texts = await Promise.all(paths.map((path) => readFile(path)));
  texts.forEach((text, index) => hash.update(`\0${relative(projectFolder, paths[index])}\0${text.length}\0`).update(text));
  return hash.digest('hex');
}

async function stampIn(folder) {
  return readFile(join(folder, '.stamp'), 'utf8').catch(() => '');
}

/** The database client is made from the schema; it depends on nothing but the schema and Prisma's version. */
async function readyClient() {
  const stamp = await hashOf(['prisma/schema.prisma', 'node_modules/prisma/package.json'].map((path) => join(projectFolder, path)));
  const isThere = (await readdir(join(generated, 'prisma')).catch(() => [])).includes('client.ts');
  if (isThere && (await stampIn(generated)) === stamp) return '';
  // With the variable set to any file that exists Prisma does not try to fetch an engine, which this step does not need.
  const env = {
    PRISMA_SCHEMA_ENGINE_BINARY: join(projectFolder, 'package.json'),
    PRISMA_HIDE_UPDATE_MESSAGE: '1',
    CHECKPOINT_DISABLE: '1',
  };
  const { code, output } = await runTool('prisma/build/index.js', ['generate'], { env });
  if (code !== 0)
    throw new StepError(`The database client could not be made.\n        ${tail(output)}`, 'Correct prisma/schema.prisma and start again.');
  await writeFile(join(generated, '.stamp'), stamp);
  return 'made';
}

async function compile(config, outDir) {
  const { code, output } = await runTool('typescript/bin/tsc', ['-p', config, '--outDir', outDir, '--noCheck', '--noResolve']);
  if (code !== 0)
    throw new StepError(
      `The program could not be compiled.\n        ${tail(output, 12)}`,
      'Correct what it names; npm run check shows more.',
    );
}

/** Puts the new output in place of the old: a server that runs from the old one has loaded its modules long ago. */
async function swapIn(next) {
  const old = await mkdtemp(join(dist, 'old-'));
  for (const name of await readdir(next)) {
    // Tried again, since another start may be doing the same.
    for (let tries = 5; tries > 0; tries -= 1) {
      await rename(join(dist, name), join(old, `${name}-${tries}`)).catch(() => undefined);
      const error = await rename(join(next, name), join(dist, name)).catch((reason) => reason);
      if (!error) break;
      if (tries === 1) throw error;
    }
  }
  await rm(old, { recursive: true, force: true });
}

/** Compiles without checking types (npm run check does that): quicker by far, and possible without the type packages. */
async function readyBuild() {
  const isSource = (name) => name.endsWith('.ts') || name === 'tsconfig.json';
  const folders = await Promise.all(['shared', 'src', 'prisma'].map((name) => filesBelow(join(projectFolder, name), isSource)));
  const sources = folders.flat().sort();
  const others = ['tsconfig.json', 'scripts/tsconfig.build.json', 'node_modules/typescript/package.json'];
  const stamp = await hashOf([...sources, ...others.map((path) => join(projectFolder, path))]);
  if ((await stampIn(dist)) === stamp) return '';
  await mkdir(dist, { recursive: true });
  const next = await mkdtemp(join(dist, 'next-'));
  try {
    const hasBrowser = sources.some((path) => path.startsWith(join(projectFolder, 'src', 'browser')) && path.endsWith('.ts'));
    await Promise.all([compile('scripts/tsconfig.build.json', next), ...(hasBrowser ? [compile('src/browser/tsconfig.json', next)] : [])]);
    await swapIn(next);
  } finally {
    await rm(next, { recursive: true, force: true });
  }
  await writeFile(join(dist, '.stamp'), stamp);
  return `${sources.length} files`;
}

/**
 * Makes the project ready to run: Node's version, packages, database client, compiled program. A step that has nothing
 * to do takes milliseconds.
 * @param {{ dev?: boolean, print?: (line: string) => void }} options dev: with what tests need
 * @throws {StepError} with what to do
 */
export async function setUp({ dev = false, print = console.log } = {}) {
  await step('node', checkNode, print);
  await step('packages', () => readyPackages({ dev, print }), print);
  await step('database client', readyClient, print);
  await step('build', readyBuild, print);
}
