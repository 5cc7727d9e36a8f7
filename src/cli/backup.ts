import { stat } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { nightlyName } from '../core/backup-rotation.js';
import { checkBackup, migrationsFolder, readPassphrase, refuseShort, writeBackup, type BackupReport } from '../platform/backup/index.js';
import { openDatabasePlace } from '../platform/database-place.js';
import { readSettings } from '../platform/settings.js';
import { version } from '../platform/version.js';
import { backupCommand, reportJson, reportWords, type Asked } from './backup-arguments.js';
import type { CommandIo } from './command.js';

/**
 * `rungwise backup <file>`: writes everything that the server's database holds to a file, while the server runs or not, and reads it back.
 * A folder gets a file named by the time. The database may be one that an older program left. Answers 0 when the file is there and sound,
 * 2 when it could not be made: then there is no file.
 */
export const run = backupCommand({
  usage: 'Use: rungwise backup <new file, or folder> [--passphrase-file <file>] [--json]',
  work: async (asked, io) => {
    const report = await taken(asked, io);
    io.out(asked.json ? JSON.stringify(reportJson(report)) : `Backup written and read back: ${report.file}\n${reportWords(report)}`);
    if (!report.encrypted) io.err('Whoever has this file can read what is in it. Keep it where only the right people come.');
  },
});

async function taken(asked: Asked, io: CommandIo): Promise<BackupReport> {
  const settings = readSettings();
  const passphrase = await readPassphrase(asked.passphraseFile ?? settings.backupPassphraseFile);
  refuseShort(passphrase);
  const now = settings.clock.now();
  const folder = await stat(asked.file).then(
    (found) => found.isDirectory(),
    () => false,
  );
  const file = resolve(folder ? join(asked.file, nightlyName(now)) : asked.file);
  io.err('Opening the database …');
  const place = await openDatabasePlace(settings, settings.dataFolder, io.err);
  try {
    const report = await writeBackup({ url: place.url, file, passphrase, program: { version }, migrationsFolder, now, progress: io.err });
    io.err('Reading it back …');
    await checkBackup({ file, passphrase, migrationsFolder });
    return report;
  } finally {
    await place.stop();
  }
}
