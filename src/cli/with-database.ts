import { join } from 'node:path';
import { openDatabasePlace } from '../platform/database-place.js';
import { openDatabase, type Db } from '../platform/db.js';
import { migrate } from '../platform/migrate.js';
import { projectFolder } from '../platform/project-folder.js';
import { readSettings } from '../platform/settings.js';
import type { CommandIo } from './command.js';

/** Opens the database that the server uses, running or not, for as long as the work takes. */
export async function withDatabase<T>(io: CommandIo, work: (db: Db) => Promise<T>): Promise<T> {
  const settings = readSettings();
  io.err('Opening the database …');
  const place = await openDatabasePlace(settings, settings.dataFolder, io.err);
  try {
    await migrate(place.url, join(projectFolder, 'prisma/migrations'));
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
