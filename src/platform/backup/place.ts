import { join } from 'node:path';
import { connectTo, migrate } from '../migrate.js';
import { projectFolder } from '../project-folder.js';
import type { Settings } from '../settings.js';
import { version } from '../version.js';
import { holdsPeople } from './catalogue.js';
import { backupBeforeMigration } from './folder.js';
import { readPassphrase, refuseShort } from './passphrase.js';

/** Where the settings say that backups are kept, and how. */

export type BackupSettings = Pick<Settings, 'backupsFolder' | 'backupPassphraseFile' | 'clock'>;

export const migrationsFolder = join(projectFolder, 'prisma/migrations');

export const backupsFolder = ({ backupsFolder: chosen }: Pick<Settings, 'backupsFolder'>, dataFolder: string): string =>
  chosen ?? join(dataFolder, 'backups');

/** What the keeping of backups needs, but for the database. @throws SetUpError when the passphrase cannot be read or is short */
export async function keptBackups(settings: BackupSettings, dataFolder: string) {
  const passphrase = await readPassphrase(settings.backupPassphraseFile);
  refuseShort(passphrase);
  return { folder: backupsFolder(settings, dataFolder), passphrase, program: { version }, migrationsFolder, now: settings.clock.now() };
}

/**
 * Brings the database to the state this program needs, after a backup of it when people are in it.
 * @returns the migrations that were applied, and the path of the backup that was taken before, or null
 * @throws SetUpError when the backup cannot be taken: then nothing is changed; and what `migrate` throws
 */
export async function migrateSafely(
  url: string,
  settings: BackupSettings,
  dataFolder: string,
): Promise<{ applied: string[]; backup: string | null }> {
  let backup: string | null = null;
  const { applied } = await migrate(url, migrationsFolder, async (first) => {
    if (await peopleAt(url))
      backup = await backupBeforeMigration(first, async () => ({ url, ...(await keptBackups(settings, dataFolder)) }));
  });
  return { applied, backup };
}

async function peopleAt(url: string): Promise<boolean> {
  const client = await connectTo(url, 'rungwise migrate');
  try {
    return await holdsPeople(client);
  } finally {
    await client.end();
  }
}
