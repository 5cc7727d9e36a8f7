import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { migrationsFolder } from '../../src/platform/backup/index.js';
import { backupFolder } from '../../src/platform/backup/kept-folder.js';
import type { ServerPlace } from '../../src/upkeep/index.js';

/** A server with a folder of backups of its own. @param now for the names of backups */
export function testPlace(url: string, now: () => Date): { place: ServerPlace; folder: string } {
  const folder = mkdtempSync(join(tmpdir(), 'rungwise-backups-'));
  const backups = backupFolder({ url, folder, now, program: { version: '0.1.0' }, migrationsFolder, dataFolder: null });
  return { place: { version: '0.1.0', server: 'test', embedded: false, sealed: false, backups }, folder };
}
