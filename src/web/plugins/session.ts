import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { requirePermission, type AccountsService, type Person } from '../../accounts/index.js';
import { RungwiseError } from '../../core/errors.js';
import type { Permission } from '../../core/permissions.js';

/**
 * Who is asking. Every route names the permission it needs in its `config.access`; a route without one stops the start.
 * The lookup happens once a request, and not at all for files.
 */

declare module 'fastify' {
  interface FastifyContextConfig {
    access?: Permission | 'file';
  }
  interface FastifyRequest {
    person: Person | null;
    /** The person of a route that needs one. */
    who(): Person;
  }
  interface FastifyReply {
    signIn(cookie: string): FastifyReply;
    signOut(): FastifyReply;
  }
}

/** Browsers drop cookies after at most 400 days. */
const cookieSeconds = 400 * 86_400;

export function session(app: FastifyInstance, accounts: AccountsService, https: boolean): void {
  // The prefix makes browsers insist on encryption and on this very host; without encryption they would drop it.
  const name = https ? '__Host-rungwise' : 'rungwise';
  const options = { path: '/', httpOnly: true, sameSite: 'lax', secure: https } as const;

  app.decorateRequest('person', null);
  app.decorateRequest('who', function who(this: FastifyRequest) {
    if (this.person === null) throw new RungwiseError('sign-in-first');
    return this.person;
  });
  app.decorateReply('signIn', function signIn(this: FastifyReply, cookie: string) {
    return this.setCookie(name, cookie, { ...options, maxAge: cookieSeconds });
  });
  app.decorateReply('signOut', function signOut(this: FastifyReply) {
    return this.clearCookie(name, options).header('clear-site-data', '"cache"');
  });

  app.addHook('onRoute', (route) => {
    const isFile = /^\/(assets|script)\//.test(route.url) || route.url === '/favicon.ico';
    const access = route.config?.access ?? (isFile ? 'file' : undefined);
    if (access === undefined) throw new Error(`The route ${String(route.method)} ${route.url} does not say who may use it.`);
    route.config = { ...route.config, access };
  });

  app.addHook('onRequest', async (request) => {
    const access = request.routeOptions.config.access;
    if (access === 'file' || request.is404) return;
    const cookie = request.cookies[name];
    if (cookie !== undefined) request.person = await accounts.whoHolds(cookie);
    requirePermission(request.person, access ?? 'come-in');
  });
}
