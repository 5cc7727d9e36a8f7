import { chown, lstat, readFile, readdir, realpath, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { SetUpError } from '../set-up-error.js';

/** The user that PostgreSQL runs as when it cannot be the user of this process: PostgreSQL refuses to run as root. */
export interface Account {
  uid: number;
  gid: number;
  name: string;
}

async function knownAccounts(): Promise<Account[]> {
  const text = await readFile('/etc/passwd', 'utf8').catch(() => '');
  return text
    .split('\n')
    .map((line) => line.split(':'))
    .filter((fields) => fields.length >= 4)
    .map((fields) => ({ name: fields[0] ?? '', uid: Number(fields[2]), gid: Number(fields[3]) }))
    .filter(({ uid, gid }) => Number.isInteger(uid) && Number.isInteger(gid));
}

async function ownerOf(path: string): Promise<number | undefined> {
  return stat(path).then(
    (found) => found.uid,
    () => undefined,
  );
}

/**
 * Decides whom PostgreSQL runs as: an ordinary user runs it himself (undefined). Root hands it to the owner of the
 * existing database, else to the owner of the data folder, else to `postgres`, else to `nobody`.
 * @param place the folder in dataFolder that holds the database, or will
 * @throws SetUpError when the database belongs to another ordinary user, or no account but root exists
 */
export async function accountFor(dataFolder: string, place: string): Promise<Account | undefined> {
  const self = process.getuid?.();
  if (self === undefined) return undefined; // Windows has no numeric users
  const owner = await ownerOf(place);
  if (self !== 0) {
    if (owner === undefined || owner === self) return undefined;
    throw new SetUpError(
      `The database in ${place} belongs to user number ${owner}, and this is user number ${self}.`,
      'Start Rungwise as the user who started it first, or as root, or set RUNGWISE_DATA to another folder.',
    );
  }
  const known = await knownAccounts();
  const wanted = [owner, await ownerOf(dataFolder)].filter((uid) => uid !== undefined && uid !== 0);
  const found =
    wanted.map((uid) => known.find((account) => account.uid === uid)).find(Boolean) ??
    known.find(({ name, uid }) => name === 'postgres' && uid !== 0) ??
    known.find(({ name, uid }) => name === 'nobody' && uid !== 0) ??
    known.find(({ uid }) => uid !== 0);
  if (found) return found;
  throw new SetUpError(
    'PostgreSQL refuses to run as root, and this system has no other account to run it as.',
    'Make one (useradd --system postgres), start Rungwise as an ordinary user, or set DATABASE_URL.',
  );
}

/** Gives a file or folder to the account; without an account nothing changes. */
export async function handOver(path: string, account: Account | undefined): Promise<void> {
  if (account) await chown(path, account.uid, account.gid);
}

/** Gives a folder and all in it to the account, as after a backup that root has copied back. Links are not followed. */
export async function handOverAll(folder: string, account: Account): Promise<void> {
  for (const entry of await readdir(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) await handOverAll(path, account);
    else if (entry.isFile()) await chown(path, account.uid, account.gid);
  }
  await chown(folder, account.uid, account.gid);
}

/**
 * Walks from the root to the folder and returns the first folder that the account may not pass through, or undefined
 * when it may pass all. One closed folder far above is enough to make initdb say only "permission denied".
 */
export async function closedFolder(folder: string, account: Account | undefined): Promise<string | undefined> {
  if (!account) return undefined;
  const way: string[] = [];
  for (let at = await realpath(folder); ; at = dirname(at)) {
    way.unshift(at);
    if (at === dirname(at)) break;
  }
  for (const at of way) {
    const { mode, uid, gid } = await lstat(at);
    const bit = uid === account.uid ? 0o100 : gid === account.gid ? 0o010 : 0o001;
    if ((mode & bit) === 0) return at;
  }
  return undefined;
}
