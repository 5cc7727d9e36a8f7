import { chmod, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import type { TestProject } from 'vitest/node';
import { startEmbeddedPostgres } from '../../src/platform/embedded-postgres/index.js';
import { migrate } from '../../src/platform/migrate.js';
import { projectFolder } from '../../src/platform/project-folder.js';

declare module 'vitest' {
  export interface ProvidedContext {
    /** The superuser of this run's database server. */
    adminUrl: string;
    /** The program's role on the migrated database that test files get copies of. Nobody may connect to it. */
    templateUrl: string;
  }
}

/** The database of a test run need not survive a power cut, and is much faster for it. */
const carefree = ['fsync', 'synchronous_commit', 'full_page_writes'].map((name) => `ALTER SYSTEM SET ${name} = off`);

async function readyTemplate(adminUrl: string): Promise<void> {
  const admin = new pg.Client({ connectionString: adminUrl });
  await admin.connect();
  for (const statement of [...carefree, 'SELECT pg_reload_conf()', 'CREATE DATABASE template OWNER rungwise']) await admin.query(statement);
  await admin.end();
}

/** One real database server for the whole run, in a temporary folder, with one migrated database to copy. */
export default async function setUp(project: TestProject): Promise<() => Promise<void>> {
  const folder = await mkdtemp(join(tmpdir(), 'rungwise-test-'));
  await chmod(folder, 0o711); // as root, the database's user must be able to pass through
  const database = await startEmbeddedPostgres({ dataFolder: join(folder, 'data'), log: () => undefined });
  const tearDown = async (): Promise<void> => {
    await database.stop();
    await rm(folder, { recursive: true, force: true });
  };
  try {
    const templateUrl = database.url.replace(/\/rungwise$/, '/template');
    await readyTemplate(database.adminUrl);
    await migrate(templateUrl, join(projectFolder, 'prisma', 'migrations'));
    project.provide('adminUrl', database.adminUrl);
    project.provide('templateUrl', templateUrl);
  } catch (error) {
    await tearDown();
    throw error;
  }
  return tearDown;
}
