import { readMigrations, refuseStrangers, type Migration } from '../migrations.js';
import type { About, BackupReport, Progress } from './format.js';
import { readBackup } from './read.js';

export interface CheckRequest {
  file: string;
  passphrase?: string | undefined;
  migrationsFolder: string;
  progress?: Progress;
}

/** Reads a backup whole, changing nothing. @throws SetUpError that says in words why it cannot be restored by this program */
export async function checkBackup({ file, passphrase, migrationsFolder, progress }: CheckRequest): Promise<BackupReport> {
  const known = await readMigrations(migrationsFolder);
  let current = '';
  return await readBackup(
    { file, passphrase },
    {
      about: (about) => refuseUnknown(about, known),
      rows: async (table) => {
        if (table !== current) progress?.(`  ${table}`);
        current = table;
      },
    },
  );
}

/** A backup of a newer program, or of one whose migrations were others, is not for this one. */
export function refuseUnknown(about: About, known: readonly Migration[]): void {
  const rows = about.migrations.map(({ name, checksum }) => ({ migration_name: name, checksum, finished: true }));
  refuseStrangers(rows, known, 'backup');
}
