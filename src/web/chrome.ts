import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { may, type Permission } from '../core/permissions.js';
import type { Chrome } from '../core/page-parts.js';
import type { Renderer } from './plugins/views.js';

/** The frame around every page: where one can go, who one is. */

declare module 'fastify' {
  interface FastifyReply {
    page(
      page: { view: string; data: object },
      chrome: Pick<Chrome, 'title'> & Partial<Pick<Chrome, 'layout' | 'scripts' | 'styles'>>,
    ): FastifyReply;
  }
}

export function pages(app: FastifyInstance, renderer: Renderer, https: boolean): void {
  app.decorateReply('page', function page(this: FastifyReply, shown, { title, layout = 'one', scripts = [], styles = [] }) {
    const { request } = this;
    const chrome: Chrome = { title, layout, scripts, styles, nav: nav(request), you: you(request), plainHttp: !https && isPlain(request) };
    return this.headers({ 'content-type': 'text/html; charset=utf-8', 'cache-control': 'no-store' }).send(renderer.page(shown, chrome));
  });
}

function nav(request: FastifyRequest): Chrome['nav'] {
  const path = request.url.split('?', 1)[0] as string;
  const offered = (permission: Permission, href: string, label: string) =>
    request.person !== null && may(request.person.role, permission) ? [{ href, label, current: path.startsWith(href) }] : [];
  const entries = [
    { href: '/', label: startLabel(request), current: path === '/' || /^\/(study|classes|club)(\/|$)/.test(path) },
    ...offered('study', '/plan', 'Plan'),
    ...offered('study', '/outlook', 'Outlook'),
    ...offered('study', '/progress', 'Progress'),
    ...offered('sit-papers', '/papers', 'Papers'),
    ...offered('set-papers', '/class-papers', 'Papers'),
    ...offered('read-bank', '/bank', 'Bank'),
    ...offered('read-bank', '/queries', 'Queries'),
    ...offered('keep-packs', '/packs', 'Packs'),
    ...offered('upkeep', '/upkeep', 'Upkeep').map((entry) => ({ ...entry, current: /^\/(upkeep|staff|people)(\/|$)/.test(path) })),
    { href: '/calculators', label: 'Calculators', current: path.startsWith('/calculators') },
    { href: '/about', label: 'About', current: path === '/about' },
  ];
  return entries;
}

function startLabel({ person }: FastifyRequest): string {
  if (person === null) return 'Start';
  return may(person.role, 'study') ? 'Now' : 'Classes';
}

const you = (request: FastifyRequest): Chrome['you'] =>
  request.person === null ? null : { name: request.person.displayName, href: '/me' };

/** Not encrypted, and not staying on this machine. */
function isPlain(request: FastifyRequest): boolean {
  return request.protocol !== 'https' && !/^(localhost|127\.|\[::1\])/.test(request.host);
}
