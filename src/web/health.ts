import type { FastifyInstance } from 'fastify';
import type { Db } from '../platform/db.js';
import { migrationsFolder } from '../platform/backup/index.js';
import { lastMigration } from '../platform/migrate.js';
import { readMigrations } from '../platform/migrations.js';

/**
 * For whoever watches the server, and nothing more than that. `/health`: 200 while the database answers. `/ready`: 200 while
 * this server may also be sent people, which it may not when the database is at another migration than the program.
 */
export function healthRoutes(db: Db) {
  return async function routes(app: FastifyInstance): Promise<void> {
    const config = { access: 'file' as const };
    const wanted = (await readMigrations(migrationsFolder)).at(-1)?.name;

    app.get('/health', { config }, async (request, reply) => {
      const answers = await asked(() => db.pool.query('SELECT 1'), request.log);
      return reply
        .code(answers ? 200 : 503)
        .header('cache-control', 'no-store')
        .send({ database: answers ? 'ok' : 'away' });
    });

    app.get('/ready', { config }, async (request, reply) => {
      let at: string | undefined;
      await asked(async () => void (at = await lastMigration(db.pool)), request.log);
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
