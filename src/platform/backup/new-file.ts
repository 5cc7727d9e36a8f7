import { randomBytes } from 'node:crypto';
import { lstat, mkdir, open, rename, rm } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { isDiskFull } from '../db.js';
import { SetUpError, codeOf, explain } from '../set-up-error.js';

/** Files that are there whole, on the disk, or not at all. */

/** A name beside the file; what a killed process leaves under it can be told by it and cleared away. */
const partName = (file: string): string => `.${basename(file)}.${randomBytes(4).toString('hex')}.part`;
export const isPart = (name: string): boolean => /^\..+\.backup\.[0-9a-f]{8}\.part$/.test(name);

const reasons: Record<string, string> = {
  ENOENT: 'its folder is not there',
  ENOTDIR: 'something on the way to it is a file, not a folder',
  EACCES: 'this user may not write there',
  EPERM: 'this user may not write there',
  EROFS: 'the disk is mounted read-only',
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk is full for this user',
  EFBIG: 'its disk takes no file of that size',
};

function unwritable(file: string, error: unknown): SetUpError {
  const full = isDiskFull(error) || ['EDQUOT', 'EFBIG'].includes(codeOf(error));
  return new SetUpError(
    `The file ${file} could not be written: ${reasons[codeOf(error)] ?? explain(error)}.`,
    full
      ? 'Make room there, or name a place on another disk (RUNGWISE_BACKUPS is the folder).'
      : 'Name another place for it (RUNGWISE_BACKUPS is the folder).',
    { cause: error },
  );
}

const exists = (file: string): Promise<boolean> =>
  lstat(file).then(
    () => true,
    () => false,
  );

export async function refuseExisting(file: string): Promise<void> {
  if (await exists(file)) throw new SetUpError(`There is a file ${file} already.`, 'Name another, or take that one away first.');
}

/** Makes a folder's entries safe on the disk; where the system cannot, it does so by itself in its own time. */
export async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r').catch(() => null);
  await handle?.sync().catch(() => undefined);
  await handle?.close();
}

/** Makes the folder for backups if need be. What lies in it is for its owner alone. */
export async function makeFolder(folder: string): Promise<void> {
  try {
    // What lies above may be the data folder, which root leaves open for the database's own user to pass through.
    await mkdir(dirname(folder), { recursive: true, mode: process.getuid?.() === 0 ? 0o711 : 0o700 });
    await mkdir(folder, { recursive: true, mode: 0o700 });
  } catch (error) {
    throw new SetUpError(
      `The folder for backups ${folder} cannot be made: ${reasons[codeOf(error)] ?? explain(error)}.`,
      'Set RUNGWISE_BACKUPS to a folder that this user may write to.',
      { cause: error },
    );
  }
}

/**
 * Writes the bytes under a name beside `file`, forces them to the disk and then gives them their name. Only the owner may read it.
 * @returns how many bytes there were
 * @throws SetUpError when the disk does not take them; whatever `bytes` throws, as it is. Nothing stays behind.
 */
export async function writeNewFile(file: string, bytes: AsyncIterable<Uint8Array>, replace: boolean): Promise<number> {
  if (!replace) await refuseExisting(file);
  const part = join(dirname(file), partName(file));
  const disk = <T>(work: Promise<T>): Promise<T> => work.catch((error: unknown) => Promise.reject(unwritable(file, error)));
  const handle = await disk(open(part, 'wx', 0o600));
  try {
    let written = 0;
    try {
      for await (const chunk of bytes) {
        await disk(handle.writeFile(chunk));
        written += chunk.byteLength;
      }
      await disk(handle.sync());
    } finally {
      await handle.close();
    }
    if (!replace) await refuseExisting(file);
    await disk(rename(part, file));
    await syncFolder(dirname(file));
    return written;
  } catch (error) {
    await rm(part, { force: true }).catch(() => undefined);
    throw error;
  }
}
