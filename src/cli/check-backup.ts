import { resolve } from 'node:path';
import { checkBackup, leftOut, migrationsFolder, readPassphrase } from '../platform/backup/index.js';
import { readSettings } from '../platform/settings.js';
import { backupCommand, grouped, reportJson, reportWords } from './backup-arguments.js';

/**
 * `rungwise check-backup <file>`: reads a backup whole and says what is in it; needs no database. Answers 0 when this program could restore
 * it, 1 when not, 2 when the command was not understood.
 */
export const run = backupCommand({
  usage: 'Use: rungwise check-backup <file> [--passphrase-file <file>] [--json]',
  failed: 1,
  work: async (asked, io) => {
    const passphrase = await readPassphrase(asked.passphraseFile ?? readSettings().backupPassphraseFile);
    const report = await checkBackup({ file: resolve(asked.file), passphrase, migrationsFolder, progress: io.err });
    const lines = report.about.tables.map(({ name, leftOut: out }) =>
      out
        ? `  ${name.padEnd(20)} left out: ${leftOut[name] ?? ''}`
        : `  ${name.padEnd(20)} ${grouped(report.rows[name] ?? 0).padStart(12)}`,
    );
    io.out(asked.json ? JSON.stringify(reportJson(report)) : [`Sound: ${report.file}`, reportWords(report), ...lines].join('\n'));
  },
});
