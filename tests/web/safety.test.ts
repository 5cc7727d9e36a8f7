import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { permissions, roles, may, type Role } from '../../src/core/permissions.js';
import { testApp, type TestApp, type Visitor } from '../support/app.js';

let app: TestApp;
const visitors = new Map<Role | 'visitor', Visitor>();
const password = 'four kettles on a hill';

beforeAll(async () => {
  app = await testApp();
  const administrator = app.visitor('10.0.0.1');
  const token = await app.accounts.setUpToken();
  await administrator.submit(await administrator.get(`/set-up/${token}`), `/set-up/${token}`, { name: 'Alma', password });
  const invited = await administrator.submit(await administrator.get('/staff'), '/staff', { name: 'Tessa', role: 'tutor' });
  const link = /\/invitation\/[A-Za-z0-9_-]{32}/.exec(invited.text)?.[0] ?? '';
  const tutor = app.visitor('10.0.0.2');
  await tutor.submit(await tutor.get(link), link, { password });
  const candidate = app.visitor('10.0.0.3');
  await candidate.start('Odo');
  visitors.set('administrator', administrator).set('tutor', tutor).set('candidate', candidate).set('visitor', app.visitor('10.0.0.4'));
});
afterAll(() => app.close());

/** Every address with parts filled in that exist nowhere. */
const addresses = () =>
  app.routes.routes
    .filter(({ access, method }) => access !== 'file' && method !== 'HEAD')
    .map(({ method, url, access }) => ({
      method: method as 'GET' | 'POST',
      access,
      url: url.replace(/:\w+/g, '00000000-0000-4000-8000-000000000000'),
    }));

describe('the table of routes and roles', () => {
  it('has a permission for every route, and each of them is in the table', () => {
    expect(addresses().length).toBeGreaterThan(15);
    expect(addresses().filter(({ access }) => !(permissions as string[]).includes(access))).toEqual([]);
  });

  it('refuses whoever the table does not name, on every route, before anything else', async () => {
    const faults: string[] = [];
    for (const { method, url, access } of addresses()) {
      for (const role of ['visitor', ...roles] as const) {
        const visitor = visitors.get(role) as Visitor;
        const { status } = await visitor.send(method, url, method === 'POST' ? {} : undefined);
        const allowed = may(role, access as never);
        const refused = role === 'visitor' ? 401 : 403;
        // A form without its token is refused as well, but only by whoever may use the route at all.
        if (!allowed && status !== refused) faults.push(`${role} ${method} ${url}: ${status}`);
        if (allowed && status === 401) faults.push(`${role} ${method} ${url}: ${status}`);
      }
    }
    expect(faults).toEqual([]);
  });
});

describe('forms from elsewhere', () => {
  const posts = () => addresses().filter(({ method }) => method === 'POST');
  const everything = async () =>
    JSON.stringify(
      await app.rows(
        'SELECT (SELECT count(*) FROM person) AS p, (SELECT count(*) FROM session) AS s, (SELECT count(*) FROM round) AS r, (SELECT count(*) FROM answer) AS a',
      ),
    );

  it.each([
    ['without the token', {}, {}],
    ['with a made-up token', { _csrf: 'abcdefgh-ijklmnopqrstuvwxyz' }, {}],
    ['from another origin', {}, { origin: 'https://evil.invalid' }],
    ['from another site', {}, { 'sec-fetch-site': 'cross-site' }],
    ['as plain text', {}, { 'content-type': 'text/plain' }],
    ['as JSON', {}, { 'content-type': 'application/json' }],
  ])('are refused by every route %s, and change nothing', async (_name, body, headers) => {
    const before = await everything();
    for (const { url, access } of posts()) {
      const role = (['candidate', 'tutor', 'administrator', 'visitor'] as const).find((one) => may(one, access as never)) ?? 'visitor';
      const { status } = await (visitors.get(role) as Visitor).send('POST', url, body, headers);
      expect([403, 415], `${url}: ${status}`).toContain(status);
    }
    expect(await everything()).toBe(before);
  });

  it('a token of one person does not serve another', async () => {
    const candidate = visitors.get('candidate') as Visitor;
    const token = (await candidate.get('/')).html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    const tutor = visitors.get('tutor') as Visitor;
    expect((await tutor.send('POST', '/me/sign-out', { _csrf: token })).status).toBe(403);
  });
});

describe('headers', () => {
  it('are strict on pages, faults and files alike', async () => {
    const visitor = visitors.get('visitor') as Visitor;
    for (const url of ['/', '/nowhere', '/assets/rungwise.css', '/health']) {
      const { headers } = await visitor.get(url);
      expect(headers['content-security-policy'], url).toBe(
        "default-src 'none';script-src 'self';style-src 'self';img-src 'self';font-src 'self';connect-src 'self';form-action 'self';base-uri 'none';frame-ancestors 'none'",
      );
      expect(headers['x-content-type-options'], url).toBe('nosniff');
      expect(headers['cross-origin-opener-policy'], url).toBe('same-origin');
      expect(headers['access-control-allow-origin'], url).toBeUndefined();
    }
    expect((await visitor.get('/')).headers['cache-control']).toBe('no-store');
  });

  it('demand encryption, and mark the cookies for it, where the server is reached by https', async () => {
    const secure = await testApp({ origin: 'https://study.example' });
    const visitor = secure.visitor();
    const page = await visitor.submit(await visitor.get('/'), '/start', { name: 'Safe' });
    expect((await visitor.send('GET', '/about', undefined, { host: 'study.example' })).text).not.toContain('not encrypted');
    // On a club's own network without https every page says so; on the machine itself there is nothing to say.
    const plain = app.visitor();
    expect((await plain.send('GET', '/about', undefined, { host: 'hut.local:3000' })).text).toContain('not encrypted');
    expect((await plain.send('GET', '/about', undefined, { host: 'localhost:3000' })).text).not.toContain('not encrypted');
    expect(page.headers['strict-transport-security']).toMatch(/max-age=\d+/);
    const cookies = [page.headers['set-cookie']].flat().map(String);
    expect(cookies.some((cookie) => cookie.startsWith('__Host-rungwise=') && cookie.includes('Secure'))).toBe(true);
    await secure.close();
  });
});

describe('bad requests', () => {
  it('an unknown address is told from a known one asked in the wrong way', async () => {
    const visitor = visitors.get('candidate') as Visitor;
    expect((await visitor.get('/nowhere')).status).toBe(404);
    const wrong = await visitor.get('/study/answer');
    expect([wrong.status, wrong.headers['allow']]).toEqual([405, 'POST']);
    expect((await visitor.send('POST', '/about', {})).status).toBe(405);
  });

  it('too much is refused before it is read, and repeated fields are not guessed at', async () => {
    const visitor = visitors.get('visitor') as Visitor;
    const form = await visitor.get('/return');
    expect((await visitor.submit(form, '/return', { phrase: 'x'.repeat(100_000) })).status).toBe(413);
    const response = await app.server.inject({
      method: 'POST',
      url: '/sign-in',
      headers: { 'content-type': 'application/x-www-form-urlencoded' },
      payload: 'name=a&name=b&password=c',
    });
    expect(response.statusCode).toBe(403);
  });

  it('a field that stands twice in a form is refused, not chosen between', async () => {
    const visitor = visitors.get('candidate') as Visitor;
    const now = await visitor.get('/');
    const csrf = now.html.querySelector('form[action="/study/rounds"] input[name=_csrf]')?.getAttribute('value') ?? '';
    const [one, two] = ['11111111-1111-4111-8111-111111111111', '22222222-2222-4222-8222-222222222222'];
    const cookie = [...visitor.cookies].map(([name, value]) => `${name}=${value}`).join('; ');
    const response = await app.server.inject({
      method: 'POST',
      url: '/study/rounds',
      headers: { 'content-type': 'application/x-www-form-urlencoded', cookie },
      payload: `_csrf=${encodeURIComponent(csrf)}&round=${one}&round=${two}&minutes=5`,
    });
    expect(response.statusCode).toBe(400);
    expect(await app.rows('SELECT id FROM round WHERE id = ANY ($1)', [[one, two]])).toEqual([]);
  });

  it.each([
    '/study/rounds/%00',
    '/study/answers/..%2f..%2fetc%2fpasswd',
    '/assets/..%2f..%2fpackage.json',
    '/assets/%2e%2e/package.json',
    '/script/shared/..%2f..%2fpackage.json',
    '/%',
  ])('the address %s leads nowhere and shows nothing', async (url) => {
    const { status, text } = await (visitors.get('candidate') as Visitor).get(url);
    expect([400, 403, 404]).toContain(status);
    expect(text).not.toMatch(/node_modules|at .*\.js:|rungwise",/);
  });

  it.each(['rungwise=', 'rungwise=%00%ff', `rungwise=${'x'.repeat(5000)}`, 'rungwise=; rungwise=a', '=;;;=', 'rungwise-form=broken'])(
    'the cookie %j is nobody’s',
    async (cookie) => {
      const response = await app.server.inject({ url: '/', headers: { cookie } });
      expect(response.statusCode).toBe(200);
      expect(response.body).toContain('Start');
    },
  );

  it('a name with markup is shown as text wherever it stands', async () => {
    const visitor = app.visitor('10.0.0.9');
    const hostile = '<img src=x onerror=alert(1)>"\'{{7*7}}';
    await visitor.start(hostile);
    for (const url of ['/', '/me']) {
      const page = await visitor.get(url);
      expect(page.html.querySelector('img')).toBeNull();
      expect(page.text).toContain('{{7*7}}');
    }
  });
});
