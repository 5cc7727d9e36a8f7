import fastifyStatic from '@fastify/static';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';

/** Our own files: style sheet, font and signs, and the browser's modules as the compiler wrote them. */
export async function files(app: FastifyInstance, folders: { assets: string; compiled: string }): Promise<void> {
  const kept = { maxAge: '365d', immutable: true, index: false as const, list: false, wildcard: true, decorateReply: false };
  await app.register(fastifyStatic, { ...kept, root: folders.assets, prefix: '/assets/' });
  // Modules import one another by relative address without a version, so browsers ask again each time.
  for (const part of ['src/browser', 'shared']) {
    const root = join(folders.compiled, part);
    if (existsSync(root)) await app.register(fastifyStatic, { ...kept, root, prefix: `/script/${part}/`, maxAge: 0, immutable: false });
  }
  app.get('/favicon.ico', { config: { access: 'file' } }, (_request, reply) => reply.redirect('/assets/favicon.ico', 308));
}
