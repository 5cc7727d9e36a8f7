import { randomUUID } from 'node:crypto';
import type { FastifyInstance } from 'fastify';
import { outlookPage } from './page.js';
import type { OutlookService } from './service.js';

/** The outlook of a candidate. */
export function outlookRoutes(outlook: OutlookService) {
  return async function routes(app: FastifyInstance): Promise<void> {
    app.get('/outlook', { config: { access: 'study' as const } }, async (request, reply) => {
      const person = request.who();
      return reply.page(outlookPage(await outlook.view(person), person, { csrf: reply.formToken(), round: () => randomUUID() }), {
        title: 'Outlook',
        layout: 'two',
      });
    });
  };
}
