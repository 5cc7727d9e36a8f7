import csrf from '@fastify/csrf-protection';
import formbody from '@fastify/formbody';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { RungwiseError } from '../../core/errors.js';

/**
 * Forms, and that they come from our own pages: each carries a token bound to the session, and what the browser says of
 * the form's origin must agree. Only form bodies are taken, since other kinds can be sent by strangers' pages unasked.
 */

declare module 'fastify' {
  interface FastifyReply {
    /** The hidden field `_csrf` of every form. */
    formToken(): string;
  }
}

const bodyLimit = 16 * 1024;

export async function forms(app: FastifyInstance, secret: Buffer, https: boolean): Promise<void> {
  z.config({ customError: ({ input }) => (input === undefined ? missing : unread) });
  app.removeAllContentTypeParsers();
  await app.register(formbody, { bodyLimit });
  await app.register(csrf, {
    cookieKey: https ? '__Host-rungwise-form' : 'rungwise-form',
    cookieOpts: { path: '/', httpOnly: true, sameSite: 'lax', secure: https },
    csrfOpts: { hmacKey: secret.toString('base64'), userInfo: true },
    getUserInfo: (request) => boundTo(request),
    getToken: (request) => (request.body as Record<string, string> | undefined)?.['_csrf'],
  });
  app.decorateReply('formToken', function formToken(this: FastifyReply) {
    return this.generateCsrf({ userInfo: boundTo(this.request) } as never);
  });
  app.addHook('onRequest', async (request) => {
    if (request.method !== 'GET' && request.method !== 'HEAD') checkOrigin(request);
  });
  app.addHook('preValidation', (request, reply, done) => {
    if (request.method === 'GET' || request.method === 'HEAD' || request.is404) done();
    else app.csrfProtection(request, reply, done);
  });
}

/** What a field says whose schema has no words of its own: the reader's would be of types and patterns. */
const missing = 'This is missing. Fill it in.';
const unread = 'This could not be read. Write it as the note beside it says.';

const boundTo = (request: FastifyRequest): string => request.person?.sessionHash.toString('base64') ?? 'visitor';

function checkOrigin(request: FastifyRequest): void {
  const site = request.headers['sec-fetch-site'];
  if (site !== undefined && site !== 'same-origin' && site !== 'none') throw new RungwiseError('form-expired', `form from ${String(site)}`);
  const { origin } = request.headers;
  if (origin !== undefined && hostOf(origin) !== request.host) throw new RungwiseError('form-expired', 'form from another origin');
}

function hostOf(origin: string): string | null {
  try {
    return new URL(origin).host;
  } catch {
    return null;
  }
}
