import { migrateSafely } from '../platform/backup/index.js';
import { openDatabasePlace } from '../platform/database-place.js';
import { openDatabase, type Db } from '../platform/db.js';
import { readSettings } from '../platform/settings.js';
import type { CommandIo } from './command.js';

/** Opens the database that the server uses, running or not, for as long as the work takes. */
export async function withDatabase<T>(io: CommandIo, work: (db: Db) => Promise<T>): Promise<T> {
  const settings = readSettings();
  io.err('Opening the database …');
  const place = await openDatabasePlace(settings, settings.dataFolder, io.err);
  try {
    const { applied, backup } = await migrateSafely(place.url, settings, settings.dataFolder);
    if (backup !== null) io.err(`The database was brought up to date (${applied.join(', ')}), after a backup: ${backup}`);
    const db = openDatabase({ url: place.url, log: io.err });
    try {
      return await work(db);
    } finally {
      await db.close();
    }
  } finally {
    await place.stop();
  }
}
