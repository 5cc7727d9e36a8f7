import { randomBytes } from 'node:crypto';
import { mkdtemp, readFile, readdir, rename, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { SetUpError, codeOf, explain } from '../set-up-error.js';
import { handOver, handOverAll } from './account.js';
import type { Home } from './data-folder.js';
import type { Program } from './program.js';
import { run } from './run.js';

/** The passwords of the two roles: `rungwise` owns the database of that name, `postgres` may do everything. */
export interface Access {
  password: string;
  adminPassword: string;
}

// Inside the cluster, so that database and passwords appear together, and are moved and copied together.
const accessFile = 'rungwise-access.json';
const initdbArguments = [
  '--username=postgres',
  '--encoding=UTF8',
  // The built-in locale sorts alike everywhere and for ever; a system library's may change under the indexes.
  '--locale-provider=builtin',
  '--builtin-locale=C.UTF-8',
  '--locale=C',
  '--auth=scram-sha-256',
];
const settings = { listen_addresses: '127.0.0.1', unix_socket_directories: '', timezone: 'UTC', log_timezone: 'UTC', fsync: 'on' };

async function writePrivate(path: string, text: string, home: Home): Promise<void> {
  await writeFile(path, text, { mode: 0o600, flag: 'wx' });
  await handOver(path, home.account);
}

async function build(program: Program, home: Home, folder: string): Promise<void> {
  const cluster = join(folder, 'cluster');
  const access: Access = { password: randomBytes(24).toString('base64url'), adminPassword: randomBytes(24).toString('base64url') };
  const passwordFile = join(folder, 'password');
  await writePrivate(passwordFile, access.adminPassword, home);
  const options = { cwd: folder, account: home.account };
  const set = Object.entries(settings).flatMap(([name, value]) => ['-c', `${name}=${value}`]);
  const made = await run(program.path('initdb'), ['-D', cluster, `--pwfile=${passwordFile}`, ...initdbArguments, ...set], options);
  await rm(passwordFile);
  if (made.code !== 0) throw initdbFailed(cluster, made.output);
  // Without a running server, so that the cluster is complete before anybody sees it.
  const roles = await run(program.path('postgres'), ['--single', '-D', cluster, 'postgres'], {
    ...options,
    input: `CREATE ROLE rungwise LOGIN CREATEDB PASSWORD '${access.password}';\nCREATE DATABASE rungwise OWNER rungwise;\n`,
  });
  if (roles.code !== 0 || roles.output.includes('ERROR:')) throw initdbFailed(cluster, roles.output);
  await writePrivate(join(cluster, accessFile), JSON.stringify(access), home);
}

function initdbFailed(cluster: string, output: string): SetUpError {
  const said = output.split('\n').filter((line) => /error|fatal|could not|cannot|no space/i.test(line));
  const advice = /user does not exist/.test(output)
    ? 'PostgreSQL needs a user that has a name: run as a user that is listed in /etc/passwd, or set DATABASE_URL.'
    : 'Mend what it names and start again; nothing was left behind.';
  return new SetUpError(`The database could not be made in ${cluster}: ${said.slice(-3).join(' ') || output.slice(-300)}`, advice);
}

/** Leftovers of starts that were killed while they made a cluster. An hour is far longer than making one takes. */
async function removeLeftovers(home: Home): Promise<void> {
  for (const name of await readdir(home.folder)) {
    if (!/^(new|program-new)-/.test(name)) continue;
    const path = join(home.folder, name);
    const { mtimeMs } = await stat(path);
    if (Date.now() - mtimeMs > 3_600_000) await rm(path, { recursive: true, force: true });
  }
}

/**
 * Makes the cluster if there is none: in a folder beside it that takes its name only when all is done. Two servers that
 * start at once may both make one; the first to finish wins, and the other one's is thrown away unseen.
 */
async function makeCluster(program: Program, home: Home): Promise<void> {
  await removeLeftovers(home);
  const folder = await mkdtemp(join(home.folder, 'new-'));
  try {
    await handOver(folder, home.account);
    await build(program, home, folder);
    await rename(join(folder, 'cluster'), home.cluster).catch((error: unknown) => {
      if (!['ENOTEMPTY', 'EEXIST', 'EPERM'].includes(codeOf(error))) throw error;
    });
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/**
 * Opens the cluster, making it first if there is none.
 * @returns the passwords
 * @throws SetUpError for another major version, or a folder that is not a cluster of ours
 */
export async function openCluster(program: Program, home: Home): Promise<Access> {
  const found = await stat(home.cluster).catch(() => undefined);
  if (!found) await makeCluster(program, home);
  else if (home.account && found.uid !== home.account.uid) await handOverAll(home.folder, home.account);
  const version = (await readFile(join(home.cluster, 'PG_VERSION'), 'utf8').catch(() => '')).trim();
  if (version !== String(program.major)) {
    throw new SetUpError(
      `The database in ${home.cluster} was made by PostgreSQL ${version || 'of an unknown version'}, and this Rungwise brings PostgreSQL ${program.major}.`,
      `Go back to the Rungwise that made it, save the data there, and load it into this one; or set RUNGWISE_DATA to another folder. Nothing was changed.`,
    );
  }
  try {
    return JSON.parse(await readFile(join(home.cluster, accessFile), 'utf8')) as Access;
  } catch (error) {
    throw new SetUpError(
      `The database in ${home.cluster} was not made by Rungwise, or its password file ${accessFile} is damaged (${explain(error)}).`,
      'Put the file back from a backup, or set RUNGWISE_DATA to another folder.',
    );
  }
}
