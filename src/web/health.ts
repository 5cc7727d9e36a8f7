import type { FastifyInstance } from 'fastify';
import type { Db } from '../platform/db.js';

/** For whoever watches the server: 200 when the database answers, 503 otherwise, and nothing more than that. */
export function healthRoutes(db: Db) {
  return async function routes(app: FastifyInstance): Promise<void> {
    app.get('/health', { config: { access: 'file' } }, async (request, reply) => {
      const answers = await db.pool.query('SELECT 1').then(
        () => true,
        (error: unknown) => {
          request.log.warn({ err: error }, 'the database does not answer');
          return false;
        },
      );
      return reply
        .code(answers ? 200 : 503)
        .header('cache-control', 'no-store')
        .send({ database: answers ? 'ok' : 'away' });
    });
  };
}
