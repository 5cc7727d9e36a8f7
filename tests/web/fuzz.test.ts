import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { may, type Permission } from '../../src/core/permissions.js';
import type { Shown, TestApp, Visitor } from '../support/app.js';
import { chance, inAddress, junk, traceIn } from '../support/junk.js';
import { smallWorld, walk, type Met } from '../support/world.js';

/**
 * Whatever is sent in place of what was meant: no route fails, and no answer shows the program's insides. The routes come from the table
 * of routes and the fields from the pages' own forms, so that what is new is tried on the day it is added. Always the same junk.
 */

type Role = 'candidate' | 'tutor' | 'administrator';
const roles: readonly Role[] = ['candidate', 'tutor', 'administrator'];

let app: TestApp;
let people: Record<Role, Visitor>;
let met: Record<Role, Met>;
/** Names of fields in any form and any address that was met. */
let names: string[];
beforeAll(async () => {
  const world = await smallWorld();
  ({ app, people } = world);
  const first = ['/', '/me', '/staff', '/packs', '/club', '/analyse', '/class-papers', '/evening', '/queries', ...world.also];
  met = {} as Record<Role, Met>;
  for (const role of roles) met[role] = await walk(people[role], first);
  const all = Object.values(met);
  names = [
    ...new Set([
      ...all.flatMap(({ forms }) => [...forms.values()].flatMap((fields) => Object.keys(fields))),
      ...all.flatMap(({ addresses }) => [...addresses].flatMap((one) => [...new URLSearchParams(one.split('?')[1] ?? '').keys()])),
      'page',
      'text',
      'saved',
      'said',
      'at',
    ]),
  ].filter((name) => name !== '_csrf');
}, 400_000);
afterAll(() => app.close());

/** Pages of the program, each with a real address that leads there, where one was met. */
function pages(): { url: string; role: Role; real: string | null }[] {
  return app.routes.routes
    .filter(({ method, access, url }) => method === 'GET' && access !== 'file' && !url.endsWith('/events'))
    .map(({ url, access }) => {
      const shape = new RegExp(`^${url.replace(/[.]/g, '\\.').replace(/:\w+/g, '[^/]+')}$`);
      const found = roles
        .filter((role) => may(role, access as Permission))
        .flatMap((role) =>
          [...met[role].addresses].filter((one) => shape.test(one.split('?', 1)[0] ?? '')).map((real) => ({ role, real })),
        );
      const role = roles.find((one) => may(one, access as Permission)) ?? 'candidate';
      return { url, ...(found[0] ?? { role, real: null }) };
    });
}

/** What is wrong with an answer, in a line; null when nothing is. */
function faultIn(what: string, { status, text, headers }: Shown): string | null {
  const trace = traceIn(text);
  if (status >= 500) return `${what}: ${status}`;
  if (headers['set-cookie'] !== undefined && [headers['set-cookie']].flat().some((cookie) => String(cookie).startsWith('a=')))
    return `${what}: a header of the sender's`;
  return trace === null ? null : `${what}: shows ${JSON.stringify(trace)}`;
}

const short = (text: string): string => JSON.stringify(text.slice(0, 40));
const lots = [...junk, ...chance(12, 20261128)];
const some = [...junk.filter((_, at) => at % 4 === 0), ...chance(2, 20261129)];

describe('an address with junk in it', () => {
  it('was met for most pages that have parts to be filled in', () => {
    const without = pages().filter(({ real, url }) => real === null && url.includes(':'));
    // Links that are used once, and what only another moment offers.
    expect(without.length, without.map(({ url }) => url).join('\n')).toBeLessThanOrEqual(8);
  });

  it('in place of each of its parts leads nowhere, and shows nothing', async () => {
    const faults: string[] = [];
    for (const { url, role, real } of pages().filter(({ url: one }) => one.includes(':'))) {
      const parts = url.split('/');
      const base = real?.split('?', 1)[0]?.split('/') ?? parts.map((part) => (part.startsWith(':') ? '1' : part));
      for (const [at, part] of parts.entries()) {
        if (!part.startsWith(':')) continue;
        for (const text of lots) {
          const address = base.map((one, index) => (index === at ? inAddress(text) : one)).join('/');
          const fault = faultIn(`${url} with ${part} ${short(text)}`, await people[role].get(address));
          if (fault !== null) faults.push(fault);
        }
      }
    }
    expect(faults.slice(0, 40)).toEqual([]);
  }, 400_000);

  it('in place of every field shows nothing but what the page would', async () => {
    const faults: string[] = [];
    for (const { url, role, real } of pages()) {
      const address = (real ?? url.replace(/:\w+/g, '1')).split('?', 1)[0] ?? '';
      const queries = [
        ...some.map((text) => names.map((name) => `${name}=${inAddress(text)}`).join('&')),
        names.map((name) => `${name}=a&${name}=b`).join('&'),
        names.map((name) => `${name}[a]=b&${name}[]=c&__proto__[polluted]=1&constructor[prototype][polluted]=1`).join('&'),
        '&&==&%&%ff&=&__proto__=1&a=%00%c0%80',
      ];
      for (const query of queries) {
        const fault = faultIn(`${url} with ${short(query)}`, await people[role].get(`${address}?${query}`));
        if (fault !== null) faults.push(fault);
      }
    }
    expect(faults.slice(0, 40)).toEqual([]);
  }, 400_000);
});

describe('a form with junk in it', () => {
  const locksOut = /sign-out|sessions|security|codes|\/remove$|\/close$|\/leave$/;

  /** Every POST route, by who may use it, with the fields of its form where a page had one. */
  function posts(): { url: string; role: Role; address: string; fields: Record<string, string> }[] {
    return (
      app.routes.routes
        .filter(({ method, access }) => method === 'POST' && access !== 'file')
        .map(({ url, access }) => {
          const shape = new RegExp(`^${url.replace(/:\w+/g, '[^/]+')}$`);
          const role = roles.find(
            (one) => may(one, access as Permission) && [...met[one].forms.keys()].some((action) => shape.test(action)),
          );
          const action = role === undefined ? undefined : [...met[role].forms.keys()].find((one) => shape.test(one));
          const fallback = roles.find((one) => may(one, access as Permission)) ?? 'candidate';
          const by = role ?? fallback;
          return {
            url,
            role: by,
            address: action ?? url.replace(/:\w+/g, '1'),
            fields: action === undefined ? {} : (met[by].forms.get(action) ?? {}),
          };
        })
        // What may end a session, or lock staff out until they have codes, comes last.
        .sort((a, b) => Number(locksOut.test(a.url)) - Number(locksOut.test(b.url)))
    );
  }

  async function tokens(): Promise<Record<Role, string>> {
    const found = {} as Record<Role, string>;
    for (const role of roles)
      found[role] = (await people[role].get('/me')).html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    return found;
  }

  it('is refused or taken as it stands, and never fails', async () => {
    const token = await tokens();
    const faults: string[] = [];
    const statuses: number[] = [];
    for (const { url, role, address, fields } of posts()) {
      const bodies = [
        ...some.map((text) => Object.fromEntries(names.map((name) => [name, text]))),
        ...Object.keys(fields).flatMap((name) => ['', '\0', '1e309', 'x'.repeat(9000)].map((text) => ({ ...fields, [name]: text }))),
        { __proto__: 'x', constructor: 'y', prototype: 'z', '__proto__[polluted]': '1', 'constructor[prototype][polluted]': '1' },
        Object.fromEntries(Array.from({ length: 1500 }, (_, at) => [`f${at}`, '1'])),
      ];
      for (const body of bodies) {
        const sent = await people[role].send('POST', address, { ...body, _csrf: token[role] } as Record<string, string>);
        if (!locksOut.test(url)) statuses.push(sent.status);
        const fault = faultIn(`${url} with ${short(new URLSearchParams(body as never).toString())}`, sent);
        if (fault !== null) faults.push(fault);
      }
    }
    expect(faults.slice(0, 40)).toEqual([]);
    // Or else it would only have been seen that they are not let in.
    expect(statuses.filter((status) => [401, 403, 429].includes(status)).length / statuses.length).toBeLessThan(0.2);
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
  }, 400_000);
});
