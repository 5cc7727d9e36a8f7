import { randomBytes } from 'node:crypto';
import type { RemovedList } from '../personal-data/index.js';
import { keptBackups, removedList } from '../platform/backup/index.js';
import { backupFolder } from '../platform/backup/kept-folder.js';
import type { Settings } from '../platform/settings.js';
import { version } from '../platform/version.js';
import type { ServerPlace } from '../upkeep/index.js';

/** What this process knows of itself and of its disk. @throws SetUpError when the passphrase of backups cannot be read or is short */
export async function serverPlace(
  settings: Settings,
  dataFolder: string,
  url: string,
): Promise<{ place: ServerPlace; removed: RemovedList }> {
  const kept = await keptBackups(settings, dataFolder);
  const embedded = settings.databaseUrl === undefined;
  const backups = backupFolder({ ...kept, url, now: () => settings.clock.now(), dataFolder: embedded ? dataFolder : null });
  const place = { version, server: randomBytes(4).toString('hex'), embedded, sealed: kept.passphrase !== undefined, backups };
  return { place, removed: removedList(kept.folder) };
}
