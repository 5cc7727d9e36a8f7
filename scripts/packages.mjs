import { readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { projectFolder, run, tail } from './processes.mjs';
import { StepError } from './steps.mjs';

const modules = join(projectFolder, 'node_modules');

async function readJson(path) {
  return JSON.parse(await readFile(path, 'utf8'));
}

/** Which packages npm has installed, by its own note of it; undefined when there is none. */
async function installed() {
  return readJson(join(modules, '.package-lock.json')).then(
    ({ packages }) => packages,
    () => undefined,
  );
}

async function isFolder(path) {
  return stat(path).then(
    (found) => found.isDirectory(),
    () => false,
  );
}

/** The development packages that this project names itself, such as vitest. */
export async function hasDevelopmentPackages() {
  const { devDependencies } = await readJson(join(projectFolder, 'package.json'));
  const there = await Promise.all(Object.keys(devDependencies).map((name) => isFolder(join(modules, name))));
  return there.every(Boolean);
}

/**
 * Compares node_modules with the lock file: every package that a start needs (and, with `dev`, a test) must be there in
 * the version the lock file names. Optional ones, which depend on the system, are not asked for.
 * @returns {Promise<string[]>} what is missing or of another version
 */
export async function missingPackages(dev) {
  const { packages } = await readJson(join(projectFolder, 'package-lock.json'));
  const present = await installed();
  const needed = Object.entries(packages).filter(
    ([path, entry]) => path !== '' && !entry.optional && !entry.devOptional && !entry.link && (dev || !entry.dev),
  );
  if (!present) return needed.map(([path]) => path);
  const wrong = needed.filter(([path, entry]) => present[path]?.version !== entry.version).map(([path]) => path);
  // npm's note stays when somebody deletes a folder by hand; looking for each folder costs a few milliseconds.
  const gone = await Promise.all(needed.map(async ([path]) => ((await isFolder(join(projectFolder, path))) ? '' : path)));
  return [...new Set([...wrong, ...gone.filter(Boolean)])];
}

function installFailed(output) {
  if (/ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ECONNRESET|ETIMEDOUT|ENETUNREACH|network/i.test(output)) {
    return new StepError(
      `The packages could not be fetched: the package registry cannot be reached.\n        ${tail(output, 4)}`,
      'Connect this computer to the internet for the first start and try again. Later starts need no network.',
    );
  }
  const advice = /ENOSPC/.test(output)
    ? 'Make room on the disk and start again.'
    : /EACCES|EPERM|EROFS/.test(output)
      ? `Let this user write to ${projectFolder}, and start again.`
      : 'Look at what npm says, put it right and start again. Deleting node_modules often helps.';
  return new StepError(`The packages could not be installed.\n        ${tail(output)}`, advice);
}

/**
 * Makes sure that the packages are there; installs exactly what the lock file names if not.
 * @param {{ dev: boolean, print: (line: string) => void }} options dev: those for tests and development, too
 * @returns {Promise<string>} a note for the step's line
 */
export async function readyPackages({ dev, print }) {
  const missing = await missingPackages(dev);
  if (missing.length === 0) return '';
  print(`        ${missing.length} packages are missing or of another version; fetching them takes a minute or so`);
  const full = dev || (await hasDevelopmentPackages());
  const args = ['ci', '--no-audit', '--no-fund', ...(full ? ['--include=dev'] : ['--omit=dev'])];
  const npm = process.env.npm_execpath;
  const { code, output } = npm?.endsWith('.js') ? await run(process.execPath, [npm, ...args]) : await run('npm', args);
  if (code !== 0) throw installFailed(output);
  const still = await missingPackages(dev);
  if (still.length > 0) throw new StepError(`npm did not install ${still.slice(0, 3).join(', ')}.`, 'Delete node_modules and start again.');
  return `installed ${missing.length}`;
}
