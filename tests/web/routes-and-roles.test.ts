import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { may, roles, type Permission, type Role } from '../../src/core/permissions.js';
import type { Shown, TestApp, Visitor } from '../support/app.js';
import { addMember, makeClass } from '../support/classes.js';
import { password } from '../support/staff.js';
import { smallWorld, walk, type Met } from '../support/world.js';

/**
 * Every route by every role, from the table of routes and from the pages' own links and forms: what is new is tried on the day it is
 * added. After OWASP ASVS 5.0.0: 3.4.3 to 3.4.6, 3.5.3, 8.2.1 to 8.2.3, 8.4.1, 13.4.4, 14.3.2, 15.3.3.
 */

let app: TestApp;
let people: Record<Role, Visitor>;
let met: Record<Role, Met>;
/** A tutor with a class of her own, and a candidate in it, who have nothing to do with the others. */
let una: Visitor;
let wren: Visitor;

beforeAll(async () => {
  const world = await smallWorld();
  ({ app, people } = world);
  una = app.visitor('10.0.0.77');
  const invited = await people.administrator.submit(await people.administrator.get('/staff'), '/staff', { name: 'Una', role: 'tutor' });
  const link = /\/invitation\/[A-Za-z0-9_-]{32}/.exec(invited.text)?.[0] ?? '';
  await una.submit(await una.get(link), link, { password });
  await addMember(app, await makeClass(app, 'Of another tutor', 'Una'), 'Secret Sedge');
  wren = await app.candidate('Wren');
  met = {} as Record<Role, Met>;
  for (const role of roles) met[role] = await walk(people[role], ['/', '/me', ...world.also]);
}, 240_000);
afterAll(() => app.close());

/** All rows of all tables, in one line a table; without what a look may note. */
async function everything(): Promise<Map<string, string>> {
  const tables = await app.rows<{ name: string }>(`SELECT tablename AS name FROM pg_tables WHERE schemaname = 'public' ORDER BY 1`);
  const found = new Map<string, string>();
  for (const { name } of tables.filter(({ name: table }) => !mayBeNoted.has(table))) {
    const [row] = await app.rows<{ sum: string }>(
      `SELECT md5(coalesce(string_agg(t, '' ORDER BY t), '')) AS sum FROM (SELECT (to_jsonb(x) - 'last_seen_at' - 'seen_at')::text AS t FROM "${name}" x) y`,
    );
    found.set(name, row?.sum ?? '');
  }
  return found;
}

/**
 * What a page writes when it is looked at: the outlook of the day, the club's figures of the day, counted guesses at links; and the list
 * of changes has a line when a table of a class is taken away.
 */
const mayBeNoted = new Set(['outlook_day', 'topic_day', 'guess', 'staff_change']);

const differing = (a: Map<string, string>, b: Map<string, string>): string[] =>
  [...a.keys()].filter((table) => a.get(table) !== b.get(table));

const pathOf = (address: string): string => address.split('?', 1)[0] ?? '';

/** The route that an address belongs to. */
function routeOf(method: string, path: string): string | null {
  const found = app.routes.routes
    .filter(
      (route) => route.method === method && new RegExp(`^${route.url.replace(/[.*]/g, '\\$&').replace(/:\w+/g, '[^/]+')}$`).test(path),
    )
    .sort((a, b) => a.url.split(':').length - b.url.split(':').length);
  return found[0]?.url ?? null;
}

describe('what the walk met', () => {
  it('is most of the routes there are, so that the rest of this file looks at something', () => {
    const seen = new Set(roles.flatMap((role) => [...met[role].addresses].map((address) => routeOf('GET', pathOf(address)))));
    const all = app.routes.routes.filter(({ method, access }) => method === 'GET' && access !== 'file').map(({ url }) => url);
    const missing = all.filter((url) => !seen.has(url));
    expect(missing.length, missing.join('\n')).toBeLessThan(all.length / 4);
  });
});

describe('every answer to everybody', () => {
  const answers = async (): Promise<[string, Shown][]> => {
    const found: [string, Shown][] = [];
    for (const role of roles)
      for (const address of met[role].addresses)
        if (!address.endsWith('/events')) found.push([`${role} ${address}`, await people[role].get(address)]);
    const visitor = app.visitor('10.0.0.78');
    for (const address of ['/', '/nowhere', '/%', '/classes/1', '/study/answer', '/health', '/ready', '/favicon.ico'])
      found.push([`visitor ${address}`, await visitor.get(address)]);
    found.push(['form without a token', await visitor.send('POST', '/start', {})]);
    return found;
  };

  it('forbids scripts, frames, sniffing and foreign readers, and is not kept where it is somebody’s', async () => {
    const faults: string[] = [];
    for (const [what, { headers, status }] of await answers()) {
      const csp = String(headers['content-security-policy']);
      const parts = ["default-src 'none'", "frame-ancestors 'none'", "base-uri 'none'"];
      // Plain words, for an address that cannot even be taken apart, hold no form.
      if (!String(headers['content-type']).startsWith('text/plain')) parts.push("script-src 'self'", "form-action 'self'");
      for (const part of parts) if (!csp.includes(part)) faults.push(`${what} (${status}): ${part}`);
      if (/unsafe|https?:|\*/.test(csp)) faults.push(`${what}: ${csp}`);
      if (headers['x-content-type-options'] !== 'nosniff') faults.push(`${what}: nosniff`);
      if (headers['cross-origin-opener-policy'] !== 'same-origin') faults.push(`${what}: opener`);
      if (headers['x-frame-options'] !== 'DENY') faults.push(`${what}: frames`);
      if (headers['access-control-allow-origin'] !== undefined) faults.push(`${what}: foreign readers`);
      if (headers['server'] !== undefined || headers['x-powered-by'] !== undefined) faults.push(`${what}: banner`);
      const page = /html|json|csv|calendar/.test(String(headers['content-type']));
      if (page && status < 400 && headers['cache-control'] !== 'no-store')
        faults.push(`${what}: kept, ${String(headers['cache-control'])}`);
    }
    expect(faults).toEqual([]);
  }, 120_000);

  it('looking changes nothing', async () => {
    const before = await everything();
    await answers();
    for (const role of roles)
      for (const address of met[role].addresses) {
        const url = pathOf(address);
        await app.server.inject({
          method: 'HEAD',
          url,
          headers: { cookie: [...people[role].cookies].map(([a, b]) => `${a}=${b}`).join('; ') },
        });
      }
    expect(differing(before, await everything())).toEqual([]);
  }, 120_000);

  it.each(['TRACE', 'OPTIONS', 'PUT', 'PATCH', 'DELETE'])('%s is answered by no route', async (method) => {
    for (const url of ['/', '/me', '/classes/1', '/health']) {
      const { statusCode, body } = await app.server.inject({ method: method as never, url, headers: { 'x-marker': 'marker' } });
      expect([400, 404, 405], `${method} ${url}`).toContain(statusCode);
      expect(body).not.toContain('marker');
    }
  });
});

/** Parts of addresses that say whose something is. What staff share (bank, packs, queries) has others. */
const owned = /:(class|person|member|paper|evening|sitting|round|token)\b/;
/** Tokens of links belong to nobody before they are used, and have tests of their own. */
const links = /^\/(set-up|invitation|join|reset)\b/;

/** The same address with numbers and ids that exist nowhere. */
function nowhere(url: string, path: string): string {
  const parts = path.split('/');
  return url
    .split('/')
    .map((part, index) => {
      if (!part.startsWith(':')) return part;
      const given = parts[index] ?? '';
      if (/^\d+$/.test(given)) return given.length > 5 ? given : '987654';
      return /^[0-9a-f-]{36}$/.test(given) ? '0b3f5e2a-9c1d-4f6b-8a7e-5d4c3b2a1f0e' : given;
    })
    .join('/');
}

/** Without what differs from one request to the next, and without the address itself. */
const masked = ({ text }: Shown, path: string): string =>
  text
    .replaceAll(path, 'address')
    .replace(/[0-9a-f]{6}-[0-9a-z]+/g, 'reference')
    .replace(/value="[^"]{20,}"/g, 'value="token"');

const kept = ({ headers }: Shown): string =>
  Object.keys(headers)
    .filter((name) => name !== 'set-cookie')
    .sort()
    .join(' ');

describe('what is somebody else’s', () => {
  it.each([
    ['a tutor’s classes, papers and evenings, to another tutor', 'tutor', () => una],
    ['a candidate’s rounds, answers and papers, to another candidate', 'candidate', () => wren],
  ] as const)(
    'answers as what does not exist: %s',
    async (_name, role, stranger) => {
      const faults: string[] = [];
      let looked = 0;
      for (const address of met[role].addresses) {
        const path = pathOf(address);
        const url = routeOf('GET', path);
        if (url === null || !owned.test(url) || links.test(url)) continue;
        const none = nowhere(url, path);
        if (none === path) continue;
        const [theirs, nothing] = [await stranger().get(path), await stranger().get(none)];
        looked += 1;
        const { access } = app.routes.routes.find((route) => route.url === url) ?? { access: '' };
        const wanted = may(role, access as Permission) ? 404 : 403;
        if (theirs.status !== wanted || nothing.status !== wanted) faults.push(`GET ${path}: ${theirs.status}, ${none}: ${nothing.status}`);
        else if (masked(theirs, path) !== masked(nothing, none) || kept(theirs) !== kept(nothing)) faults.push(`GET ${path} differs`);
      }
      expect(looked).toBeGreaterThan(role === 'tutor' ? 15 : 5);
      expect(faults).toEqual([]);
    },
    120_000,
  );

  it.each([
    ['a tutor’s', 'tutor', () => una],
    ['a candidate’s', 'candidate', () => wren],
  ] as const)(
    'is changed by no form of a stranger: %s',
    async (_name, role, stranger) => {
      const before = await everything();
      const _csrf = (await stranger().get('/me')).html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
      const faults: string[] = [];
      let sent = 0;
      for (const [action, fields] of met[role].forms) {
        const path = pathOf(action);
        const url = routeOf('POST', path);
        if (url === null || !owned.test(url) || links.test(url)) continue;
        const theirs = await stranger().send('POST', path, { ...fields, _csrf });
        sent += 1;
        // What a form of one's own would get, such as a way back to a list, is given alike for what is nothing.
        const none = nowhere(url, path);
        const nothing = await stranger().send('POST', none, { ...fields, _csrf });
        if (theirs.status !== nothing.status || masked(theirs, path) !== masked(nothing, none))
          faults.push(`POST ${path}: ${theirs.status}, ${none}: ${nothing.status}`);
      }
      expect(sent).toBeGreaterThan(2);
      expect(faults).toEqual([]);
      expect(differing(before, await everything())).toEqual([]);
    },
    120_000,
  );
});

describe('fields that a form does not have', () => {
  const extra = {
    role: 'administrator',
    id: '1',
    personId: '1',
    person_id: '1',
    score: '100',
    right: 'true',
    passed: 'true',
    dueDay: '1',
    stability: '99999',
    tutor: 'yes',
    madeBy: '1',
    passwordHash: 'x',
    keep_until: '2099-01-01',
  };

  it('set nothing, whatever form they are added to', async () => {
    const watched = () =>
      app.rows(
        `SELECT (SELECT jsonb_agg(jsonb_build_array(id, role, password_hash, keep_until, closed_at) ORDER BY id) FROM person WHERE display_name <> 'New') AS people,
           (SELECT max(stability) < 90000 FROM memory) AS memories, (SELECT jsonb_agg(jsonb_build_array(class_id, person_id) ORDER BY 1) FROM class_tutor) AS tutors,
           (SELECT jsonb_agg("right" ORDER BY id) FROM sitting WHERE handed_in_at IS NOT NULL) AS marks`,
      );
    const before = await watched();
    let sent = 0;
    for (const [action, fields] of met.candidate.forms) {
      if (/remove|sign-out|leave|sessions|hand-in/.test(action)) continue; // does what it says, and would end what the next form needs
      const own = Object.fromEntries(Object.entries(fields).filter(([name]) => name !== '_csrf'));
      const _csrf = (await people.candidate.get('/me')).html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
      const { status } = await people.candidate.send('POST', pathOf(action), { ...extra, ...own, _csrf });
      expect(status, action).toBeLessThan(500);
      sent += 1;
    }
    expect(sent).toBeGreaterThan(5);
    expect(await watched()).toEqual(before);
  }, 60_000);
});
