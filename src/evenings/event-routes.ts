import { Readable } from 'node:stream';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { known } from '../core/errors.js';
import * as forms from './forms.js';
import type { EveningsService } from './service.js';

/** The streams of changes (server-sent events). A page that is refused one looks again by itself now and then. */

/** Bytes that may wait for a browser that reads too slowly. */
const mostWaiting = 16_384;
const reconnectMilliseconds = 3000;

const headers = {
  'content-type': 'text/event-stream; charset=utf-8',
  'cache-control': 'no-store',
  // Proxies that gather what passes would hold the events back.
  'x-accel-buffering': 'no',
  // When the stream ends, so does the connection: a server that stops must not wait for it.
  connection: 'close',
};

export function eventRoutes(app: FastifyInstance, { live, holding, joining }: EveningsService): void {
  // Asked with HEAD it would begin a stream that nobody reads.
  const exposeHeadRoute = false;

  app.get('/classes/:class/evenings/:evening/events', { config: { access: 'hold-evenings' }, exposeHeadRoute }, async (request, reply) => {
    const { class: classId, evening } = known(forms.heldParams.safeParse(request.params));
    const head = await holding.headOf(request.who(), classId, evening);
    return head.endedAt === null ? stream(request, reply, evening, true) : reply.code(204).send();
  });

  app.get('/evening/:evening/events', { config: { access: 'join-evenings' }, exposeHeadRoute }, async (request, reply) => {
    const { evening } = known(forms.joinedParams.safeParse(request.params));
    const { endedAt, member } = await joining.joined(request.who(), evening, null);
    // 204 tells a browser not to come again.
    return endedAt === null && member ? stream(request, reply, evening, false) : reply.code(204).send();
  });

  // Before the server waits for what is open.
  app.addHook('preClose', async () => await live.close());

  function stream(request: FastifyRequest, reply: FastifyReply, eveningId: string, counts: boolean): FastifyReply {
    const person = request.who();
    const out = new Readable({ read: () => undefined });
    const listener = {
      eveningId,
      personId: person.id,
      sessionHash: person.sessionHash,
      counts,
      send: (text: string): void => {
        out.push(text);
        if (out.readableLength > mostWaiting) out.destroy();
      },
      end: (): void => void out.push(null),
    };
    if (!live.listen(listener)) {
      return reply
        .code(503)
        .headers({ 'retry-after': '60', 'cache-control': 'no-store' })
        .type('text/plain')
        .send('Too many pages listen just now.');
    }
    out.on('close', () => live.leave(listener));
    out.push(`retry: ${reconnectMilliseconds}\n\n`);
    return reply.headers(headers).send(out);
  }
}
