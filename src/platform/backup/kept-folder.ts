import { createReadStream, type ReadStream } from 'node:fs';
import { readdir, stat, statfs } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { removedName } from '../../core/backup-rotation.js';
import { nightlyBackup, type KeptBackups } from './folder.js';

/** The folder with the server's own backups, as an administrator's page and the nightly job use it. */
export interface BackupFolder {
  /** The latest first. */
  list(): Promise<BackupFile[]>;
  /** Free and whole bytes of its disk; null when that cannot be asked. */
  disk(): Promise<{ free: number; whole: number } | null>;
  /** Whether the database lies on the same disk; null when it lies elsewhere or that cannot be told. */
  sameDisk(): Promise<boolean | null>;
  /** Takes one, reads it back, and removes those whose time is up. @throws SetUpError with what to do */
  take(): Promise<{ file: string; bytes: number; rows: number }>;
  /** Null when there is no such backup. */
  open(name: string): Promise<{ stream: ReadStream; bytes: number } | null>;
}

export interface BackupFile {
  name: string;
  bytes: number;
  at: Date;
}

/** @param dataFolder with the embedded database; null when the database is elsewhere */
export function backupFolder(request: Omit<KeptBackups, 'now'> & { now: () => Date; dataFolder: string | null }): BackupFolder {
  const { folder, dataFolder, now, ...kept } = request;
  let under: ReturnType<BackupFolder['take']> | undefined;

  async function list(): Promise<BackupFile[]> {
    const names = (await readdir(folder).catch(() => [])).filter((name) => /^[\w-]+\.backup$/.test(name));
    const files = await Promise.all(
      names.map(async (name) => {
        const found = await stat(join(folder, name)).catch(() => null);
        return found?.isFile() === true ? [{ name, bytes: found.size, at: found.mtime }] : [];
      }),
    );
    return files.flat().sort((a, b) => b.at.getTime() - a.at.getTime() || (a.name < b.name ? 1 : -1));
  }

  async function disk(): Promise<{ free: number; whole: number } | null> {
    const found = await statfs(await nearest(folder)).catch(() => null);
    return found === null ? null : { free: found.bavail * found.bsize, whole: found.blocks * found.bsize };
  }

  async function sameDisk(): Promise<boolean | null> {
    if (dataFolder === null) return null;
    const [one, other] = await Promise.all([folder, dataFolder].map(async (path) => (await stat(await nearest(path))).dev)).catch(() => []);
    return one === undefined ? null : one === other;
  }

  return {
    list,
    disk,
    sameDisk,
    // Two at once would write the same file: whoever comes second gets the first one's.
    take: () => (under ??= nightlyBackup({ ...kept, folder, now: now() }).finally(() => (under = undefined))),
    open: async (name) => {
      const found =
        name === removedName
          ? await stat(join(folder, name)).then(
              ({ size }) => ({ bytes: size }),
              () => undefined,
            )
          : (await list()).find((file) => file.name === name);
      return found === undefined ? null : { stream: createReadStream(join(folder, name)), bytes: found.bytes };
    },
  };
}

/** The folder, or the nearest above it that is there: the first backup makes it. */
async function nearest(path: string): Promise<string> {
  const found = await stat(path).catch(() => null);
  const above = dirname(path);
  return found !== null || above === path ? path : await nearest(above);
}
