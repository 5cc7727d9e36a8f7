import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { freshness, requirePermission, type AccountsService, type Visit } from '../../accounts/index.js';
import { RungwiseError } from '../../core/errors.js';
import type { Permission } from '../../core/permissions.js';
import type { Clock } from '../../platform/clock.js';

/**
 * Who is asking. Every route names the permission it needs in its `config.access`; a route without one stops the start.
 * The lookup happens once a request, and not at all for files.
 */

declare module 'fastify' {
  interface FastifyContextConfig {
    access?: Permission | 'file';
    /** Staff must have typed their password lately: a page leads to typing it again, a form is refused when it is too long ago. */
    fresh?: boolean;
    /** Open to staff who still have to set up their one-time codes. */
    beforeCodes?: boolean;
  }
  interface FastifyRequest {
    person: Visit | null;
    /** The person of a route that needs one. */
    who(): Visit;
  }
  interface FastifyReply {
    /** @param shared on a computer that others use the cookie goes when the browser is closed */
    signIn(cookie: string, shared?: boolean): FastifyReply;
    /** Sends the cookie that was brought anew, to go when the browser is closed. */
    keepShared(request: FastifyRequest): FastifyReply;
    signOut(): FastifyReply;
  }
  interface FastifyInstance {
    /** Whether an own address, with what it asks, is that of a page which wants the password typed lately: only there leads `/confirm`. */
    isFreshPage(address: string): boolean;
  }
}

/** Browsers drop cookies after at most 400 days. */
const cookieSeconds = 400 * 86_400;

export function session(app: FastifyInstance, accounts: AccountsService, { https, clock }: { https: boolean; clock: Clock }): void {
  // The prefix makes browsers insist on encryption and on this very host; without encryption they would drop it.
  const name = https ? '__Host-rungwise' : 'rungwise';
  const options = { path: '/', httpOnly: true, sameSite: 'lax', secure: https } as const;

  app.decorateRequest('person', null);
  app.decorateRequest('who', function who(this: FastifyRequest) {
    if (this.person === null) throw new RungwiseError('sign-in-first');
    return this.person;
  });
  app.decorateReply('signIn', function signIn(this: FastifyReply, cookie: string, shared = false) {
    return this.setCookie(name, cookie, shared ? options : { ...options, maxAge: cookieSeconds });
  });
  app.decorateReply('keepShared', function keepShared(this: FastifyReply, request: FastifyRequest) {
    return this.setCookie(name, request.cookies[name] ?? '', options);
  });
  app.decorateReply('signOut', function signOut(this: FastifyReply) {
    // Answers of a paper that the server has not had yet lie in the browser's storage: one's own browser keeps them, a shared one does not.
    const cleared = this.request.person?.shared === true ? '"cache", "storage"' : '"cache"';
    return this.clearCookie(name, options).header('clear-site-data', cleared);
  });
  const freshPages = routesAndFreshPages(app);

  app.addHook('onRequest', async (request, reply) => {
    const { access, fresh, beforeCodes } = request.routeOptions.config;
    if (access === 'file' || request.is404) return;
    const cookie = request.cookies[name];
    if (cookie !== undefined) request.person = await accounts.whoHolds(cookie);
    requirePermission(request.person, access ?? 'come-in');
    const { person } = request;
    const form = request.method !== 'GET' && request.method !== 'HEAD';
    if (person?.needsCodes === true && beforeCodes !== true) {
      if (form) throw new RungwiseError('codes-first');
      return reply.redirect('/me/codes', 303);
    }
    if (fresh === true && person !== null && !freshness(person, clock.now(), form)) {
      if (form) throw new RungwiseError('confirm-first');
      return reply.redirect(`/confirm?back=${encodeURIComponent(request.url)}`, 303);
    }
  });
  app.decorate('isFreshPage', (address: string) => freshPages.some((pattern) => pattern.test(address)));
}

/** Sees to it that every route says who may use it. @returns patterns of the addresses of pages that want a fresh password */
function routesAndFreshPages(app: FastifyInstance): RegExp[] {
  const freshPages: RegExp[] = [];
  app.addHook('onRoute', (route) => {
    const isFile = /^\/(assets|script)\//.test(route.url) || route.url === '/favicon.ico';
    const access = route.config?.access ?? (isFile ? 'file' : undefined);
    if (access === undefined) throw new Error(`The route ${String(route.method)} ${route.url} does not say who may use it.`);
    route.config = { ...route.config, access };
    if (route.config.fresh === true && [route.method].flat().includes('GET'))
      freshPages.push(new RegExp(`^${route.url.replace(/[.*+?^$()|[\]\\]/g, '\\$&').replace(/:\w+/g, '[\\w.-]+')}(\\?[\\w=&.,%+-]*)?$`));
  });
  return freshPages;
}
