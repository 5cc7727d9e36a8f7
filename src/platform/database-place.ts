import { startEmbeddedPostgres } from './embedded-postgres/index.js';
import type { Settings } from './settings.js';

export interface OpenedPlace {
  url: string;
  /** Where it is, in words. */
  note: string;
  stop: () => Promise<unknown>;
}

/** Where root keeps the database when the project lies where PostgreSQL's user may not enter. */
const outsideFolder = '/var/lib/rungwise';

/**
 * The database that the settings name, or the embedded one in `dataFolder`: started, or entered where a server uses it already.
 * @throws SetUpError when it cannot be opened
 */
export async function openDatabasePlace(settings: Settings, dataFolder: string, log: (text: string) => void): Promise<OpenedPlace> {
  if (settings.databaseUrl !== undefined)
    return { url: settings.databaseUrl, note: 'the one DATABASE_URL names', stop: async () => undefined };
  const embedded = await startEmbeddedPostgres({ dataFolder, ...(settings.dataFolderChosen ? {} : { outside: outsideFolder }), log });
  return { url: embedded.url, note: embedded.adopted ? 'was running already' : dataFolder, stop: embedded.stop };
}
