import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { known } from '../core/errors.js';
import { SetUpError } from '../platform/set-up-error.js';
import { changesPage, upkeepPage } from './pages.js';
import type { UpkeepService } from './service.js';

/** The administrator's pages: how the server is doing, its backups, and what staff changed. */

const backupParams = z.object({ file: z.string().regex(/^([\w-]{1,80}\.backup|removed-people\.txt)$/) });
const changesQuery = z.object({ before: z.coerce.number().int().positive().max(2_147_483_647).optional().catch(undefined) });
const config = { access: 'upkeep' as const };
const styles = ['class.css'];

export function upkeepRoutes(upkeep: UpkeepService) {
  return async function routes(app: FastifyInstance): Promise<void> {
    async function show(request: FastifyRequest, reply: FastifyReply, why: string | null): Promise<FastifyReply> {
      const person = request.who();
      const taken = (request.query as { taken?: unknown }).taken === 'yes';
      const page = upkeepPage(await upkeep.state(person), person, reply.formToken(), why, taken && why === null);
      return reply.page(page, { title: 'Upkeep', layout: 'wide', styles });
    }

    app.get('/upkeep', { config }, (request, reply) => show(request, reply, null));

    app.post('/upkeep/backups', { config }, async (request, reply) => {
      try {
        await upkeep.takeBackup(request.who());
      } catch (error) {
        if (!(error instanceof SetUpError)) throw error;
        request.log.error({ err: error }, 'a backup could not be taken');
        return await show(request, reply.code(422), error.advice);
      }
      return reply.redirect('/upkeep?taken=yes', 303);
    });

    // Everybody's names and answers leave by this door: the password is asked for again.
    app.get('/upkeep/backups/:file', { config: { ...config, fresh: true } }, async (request, reply) => {
      const { file } = known(backupParams.safeParse(request.params));
      const { stream, bytes } = await upkeep.openBackup(request.who(), file);
      return reply
        .headers({
          'content-type': 'application/octet-stream',
          'content-disposition': `attachment; filename="${file}"`,
          'content-length': String(bytes),
          'cache-control': 'no-store',
        })
        .send(stream);
    });

    app.get('/upkeep/changes', { config }, async (request, reply) => {
      const person = request.who();
      const { before } = changesQuery.parse(request.query ?? {});
      return reply.page(changesPage(await upkeep.changes(person, before), person), { title: 'What staff changed', layout: 'wide', styles });
    });
  };
}
