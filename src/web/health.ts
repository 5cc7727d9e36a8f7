import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';
import type { Db } from '../platform/db.js';
import { projectFolder } from '../platform/project-folder.js';

/**
 * For whoever watches the server, and nothing more than that. `/health`: 200 while the database answers. `/ready`: 200 while
 * this server may also be sent people, which it may not when the database is at another migration than the program.
 */
export function healthRoutes(db: Db) {
  return async function routes(app: FastifyInstance): Promise<void> {
    const config = { access: 'file' as const };
    const wanted = await latestMigration();

    app.get('/health', { config }, async (request, reply) => {
      const answers = await asked(() => db.pool.query('SELECT 1'), request.log);
      return reply
        .code(answers ? 200 : 503)
        .header('cache-control', 'no-store')
        .send({ database: answers ? 'ok' : 'away' });
    });

    app.get('/ready', { config }, async (request, reply) => {
      let at: string | undefined;
      await asked(async () => void (at = await migrationOf(db)), request.log);
      return reply
        .code(at === wanted ? 200 : 503)
        .header('cache-control', 'no-store')
        .send({ ready: at === wanted });
    });
  };
}

async function asked(question: () => Promise<unknown>, log: FastifyInstance['log']): Promise<boolean> {
  return await question().then(
    () => true,
    (error: unknown) => {
      log.warn({ err: error }, 'the database does not answer');
      return false;
    },
  );
}

async function latestMigration(): Promise<string | undefined> {
  const names = await readdir(join(projectFolder, 'prisma', 'migrations'));
  return names
    .filter((name) => /^\d{4}_/.test(name))
    .sort()
    .at(-1);
}

async function migrationOf(db: Db): Promise<string | undefined> {
  const { rows } = await db.pool.query<{ name: string }>(
    `SELECT migration_name AS name FROM _prisma_migrations WHERE finished_at IS NOT NULL AND rolled_back_at IS NULL ORDER BY migration_name COLLATE "C" DESC LIMIT 1`,
  );
  return rows[0]?.name;
}
