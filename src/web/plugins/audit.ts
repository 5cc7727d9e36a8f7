import type { FastifyInstance, FastifyRequest } from 'fastify';
import { recordChange } from '../../audit/index.js';
import { may, type Permission } from '../../core/permissions.js';
import type { Clock } from '../../platform/clock.js';
import type { Db } from '../../platform/db.js';
import { changes, takenAway } from '../changes.js';

/**
 * The list of what staff changed, filled from the table of routes, so that a new route is covered on the day it is added.
 * The line is written before the answer goes out: what was acknowledged stands in the list.
 */

declare module 'fastify' {
  interface FastifyRequest {
    /** Numbers that the list should hold beside those in the address, such as that of somebody newly made. */
    about: Record<string, number | string> | null;
  }
}

/** Parts of addresses that say what it was about. Others, such as tokens, may open something and are not kept. */
const kept = new Set(['class', 'person', 'member', 'paper', 'evening', 'sitting', 'query', 'upload']);

export function audit(app: FastifyInstance, { db, clock }: { db: Db; clock: Clock }): void {
  app.decorateRequest('about', null);

  app.addHook('onRoute', ({ method, url, config }) => {
    const changing = [method].flat().some((one) => one !== 'GET' && one !== 'HEAD');
    const access = config?.access;
    if (!changing || access === undefined || access === 'file' || !staffMay(access)) return;
    if (!Object.hasOwn(changes, url)) throw new Error(`The route ${String(method)} ${url} does not say in web/changes.ts what it changes.`);
  });

  app.addHook('onSend', async (request, reply) => {
    const change = reply.statusCode < 400 ? changeOf(request) : null;
    if (change !== null) await recordChange(db.pool, clock.now(), change);
  });
}

const staffMay = (access: Permission): boolean => may('tutor', access) || may('administrator', access);

function changeOf(request: FastifyRequest) {
  const { person, method } = request;
  if (person === null || person.role === 'candidate') return null;
  const url = request.routeOptions.url ?? '';
  const what = (method === 'POST' ? changes[url] : method === 'GET' ? takenAway[url] : null) ?? null;
  if (what === null) return null;
  const params = Object.entries(request.params as Record<string, string>).filter(([name]) => kept.has(name));
  const numbers = params.map(([name, value]) => [name, /^\d{1,9}$/.test(value) ? Number(value) : value.slice(0, 60)]);
  const about = { ...(Object.fromEntries(numbers) as Record<string, number | string>), ...request.about };
  return { personId: person.id, role: person.role, what, about };
}
