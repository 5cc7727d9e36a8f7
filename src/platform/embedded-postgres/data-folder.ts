import { access, constants, lstat, mkdir, mkdtemp, readdir, realpath, statfs, symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { SetUpError, codeOf, explain } from '../set-up-error.js';
import { accountFor, closedFolder, handOver, type Account } from './account.js';

/** The places in a data folder that is ready for use. */
export interface Home {
  /** Belongs to `account`; holds the cluster, its log, and a copy of the programs where one is needed. */
  folder: string;
  cluster: string;
  log: string;
  account: Account | undefined;
}

const marker = 'ABOUT.txt';
/** Backups may be there before a database is: brought along, or made of an outside one. */
const backups = 'backups';
const about = `Rungwise keeps its data in this folder: its database in postgres/, and backups.
Do not change anything in postgres/ by hand. To move or copy the folder, stop Rungwise first.
`;
/** A new cluster takes 40 MB and the first log segments; below 64 MB an answer might not find room. */
const leastFreeBytes = { existing: 64 * 2 ** 20, fresh: 160 * 2 ** 20 };
const advice = 'Set RUNGWISE_DATA to a folder of its own that this user may write to, or DATABASE_URL to a PostgreSQL server of your own.';

function unusable(folder: string, error: unknown): SetUpError {
  const reasons: Record<string, string> = {
    EACCES: 'this user may not write there',
    EPERM: 'this user may not write there',
    EROFS: 'it lies on a disk that is mounted read-only',
    EEXIST: 'there is a file of that name, not a folder',
    ENOTDIR: 'something on the way to it is a file, not a folder',
    ENOSPC: 'the disk is full',
  };
  return new SetUpError(`The data folder ${folder} cannot be used: ${reasons[codeOf(error)] ?? explain(error)}.`, advice, { cause: error });
}

/** Makes the folder if need be, and refuses one that holds something else: what we did not make, we do not touch. */
async function claim(folder: string): Promise<void> {
  try {
    // Root's folder must let the database's account pass through; what lies in it is closed on its own.
    await mkdir(folder, { recursive: true, mode: process.getuid?.() === 0 ? 0o711 : 0o700 });
    const entries = (await readdir(folder)).filter((name) => !name.startsWith('.') && !['lost+found', backups].includes(name));
    if (!entries.includes(marker)) {
      if (entries.length > 0) {
        throw new SetUpError(`The data folder ${folder} holds something else already (${entries.slice(0, 3).join(', ')}).`, advice);
      }
      await writeFile(join(folder, marker), about);
    }
    await access(folder, constants.W_OK | constants.X_OK);
  } catch (error) {
    throw error instanceof SetUpError ? error : unusable(folder, error);
  }
}

/** @param least bytes that must be free
 * @throws SetUpError */
export async function refuseWithoutRoom(folder: string, least: number): Promise<void> {
  const { bavail, bsize } = await statfs(folder);
  if (bavail * bsize >= least) return;
  const megabytes = (bytes: number) => `${Math.floor(bytes / 2 ** 20)} MB`;
  throw new SetUpError(
    `The disk of ${folder} has only ${megabytes(bavail * bsize)} free, and the database needs ${megabytes(least)} to work safely.`,
    'Make room, or set RUNGWISE_DATA to a folder on another disk.',
  );
}

async function exists(path: string): Promise<boolean> {
  return lstat(path).then(
    () => true,
    () => false,
  );
}

/**
 * Makes `postgres/` in the data folder. When root started us inside a folder that the database's account may not enter
 * (/root, say), it becomes a link to a new folder in `outside`; without one, that is refused and the closed folder named.
 */
async function makeHome(
  dataFolder: string,
  account: Account | undefined,
  outside: string | undefined,
  say: (text: string) => void,
): Promise<void> {
  const folder = join(dataFolder, 'postgres');
  if (await exists(folder)) return;
  const closed = await closedFolder(dataFolder, account);
  if (!closed || !outside) {
    await mkdir(folder, { recursive: true, mode: 0o700 });
    await handOver(folder, account);
    return;
  }
  await mkdir(outside, { recursive: true, mode: 0o755 });
  const home = await mkdtemp(join(outside, 'rungwise-'));
  await handOver(home, account);
  await symlink(home, folder);
  say(
    `PostgreSQL cannot run as root, and user ${account?.name} may not enter ${closed}: the database is kept in ${home} (${folder} links to it).`,
  );
}

/**
 * Readies the data folder: made, ours, writable, with room, and open to the user PostgreSQL will run as.
 * @param outside where root may keep the database instead if the folder itself is closed to that user
 * @throws SetUpError naming the folder and the reason
 */
export async function openHome(dataFolder: string, outside: string | undefined, say: (text: string) => void): Promise<Home> {
  await claim(dataFolder);
  const place = join(dataFolder, 'postgres');
  const account = await accountFor(dataFolder, place);
  await makeHome(dataFolder, account, outside, say).catch((error: unknown) => {
    if (codeOf(error) !== 'EEXIST') throw unusable(place, error);
  });
  const folder = await realpath(place).catch((error: unknown) => Promise.reject(unusable(place, error)));
  // Root has copied it back from a backup, say: openCluster then hands over what is in it, too.
  if ((await lstat(folder)).uid !== account?.uid) await handOver(folder, account);
  const closed = await closedFolder(folder, account);
  if (closed) {
    throw new SetUpError(
      `PostgreSQL refuses to run as root, and user ${account?.name}, whom it would run as, may not pass through ${closed} to reach ${folder}.`,
      `Set RUNGWISE_DATA to a folder outside it (such as /var/lib/rungwise), or open the way: chmod o+x ${closed}`,
    );
  }
  const cluster = join(folder, 'cluster');
  await refuseWithoutRoom(folder, (await exists(cluster)) ? leastFreeBytes.existing : leastFreeBytes.fresh);
  return { folder, cluster, log: join(folder, 'server.log'), account };
}
