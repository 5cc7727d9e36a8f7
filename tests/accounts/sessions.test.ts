import { createHash } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { tidyAccounts } from '../../src/accounts/tidy-store.js';
import { testApp, type Shown, type TestApp, type Visitor } from '../support/app.js';
import { password, staffOf } from '../support/staff.js';

let app: TestApp;
let tutor: Visitor;
let addresses = 0;
const someone = (): Visitor => app.visitor(`10.4.0.${(addresses += 1)}`);
beforeAll(async () => {
  app = await testApp();
  ({ tutor } = await staffOf(app));
});
afterAll(() => app.close());

const hour = 3_600_000;
const comeBack = async (visitor: Visitor, words: string[], more: Record<string, string> = {}): Promise<Shown> =>
  await visitor.submit(await visitor.get('/return'), '/return', { phrase: words.join(' '), ...more });
const cookieLine = (page: Shown): string =>
  [page.headers['set-cookie']]
    .flat()
    .map(String)
    .find((line) => line.startsWith('rungwise=')) ?? '';

describe('the cookie', () => {
  it('holds 192 random bits, and the database holds their hash alone', async () => {
    const visitor = someone();
    await visitor.start('Hashed');
    const value = visitor.cookies.get('rungwise') ?? '';
    expect(Buffer.from(value, 'base64url')).toHaveLength(24);
    const tables = await app.rows<{ name: string }>(
      "SELECT table_name AS name FROM information_schema.tables WHERE table_schema = 'public'",
    );
    const dump = await Promise.all(tables.map(async ({ name }) => JSON.stringify(await app.rows(`SELECT t::text FROM "${name}" t`))));
    const all = dump.join('\n');
    expect(all).toContain(createHash('sha256').update(value).digest('hex'));
    for (const form of [value, Buffer.from(value).toString('hex'), Buffer.from(value, 'base64url').toString('hex')])
      expect(all).not.toContain(form);
  });

  it.each([
    ['/start', 'name', { name: 'Planted', timeZone: 'UTC' }],
    ['/return', 'phrase', {}],
    ['/sign-in', 'name', { name: 'Tessa', password }],
  ])('that was made up is never taken on by %s', async (action, _field, fields) => {
    const words = await someone().start('Phrase');
    const visitor = someone();
    const planted = 'B'.repeat(32);
    visitor.cookies.set('rungwise', planted);
    const page = await visitor.get(action === '/start' ? '/' : action);
    await visitor.submit(page, action, action === '/return' ? { phrase: words.join(' ') } : fields);
    const given = visitor.cookies.get('rungwise');
    expect([given === planted, given?.length]).toEqual([false, 32]);
    expect((await visitor.get('/me')).status).toBe(200);
    visitor.cookies.set('rungwise', planted);
    expect((await visitor.get('/me')).status).toBe(401);
  });

  it('of before is dead once somebody comes in with the same browser', async () => {
    const words = await someone().start('Second');
    for (const come of [
      (visitor: Visitor) => comeBack(visitor, words),
      async (visitor: Visitor) => await visitor.submit(await visitor.get('/sign-in'), '/sign-in', { name: 'Tessa', password }),
    ]) {
      const visitor = someone();
      await visitor.start('First');
      const before = visitor.cookies.get('rungwise') ?? '';
      expect((await come(visitor)).status).toBe(303);
      expect(visitor.cookies.get('rungwise')).not.toBe(before);
      visitor.cookies.set('rungwise', before);
      expect((await visitor.get('/me')).status).toBe(401);
    }
  });
});

describe('lifetimes', () => {
  it.each([
    ['one’s own browser', {}, 120 * 24 * hour, 400 * 24 * hour],
    ['a shared computer', { shared: 'yes' }, hour, 12 * hour],
  ])('of a candidate on %s: so long without a visit, and so long in all', async (_where, more, idle, whole) => {
    const start = app.clock.now();
    const words = await someone().start('Liver');
    const idler = someone();
    await comeBack(idler, words, more);
    app.clock.forward(idle - 1000);
    expect((await idler.get('/me')).status).toBe(200);
    app.clock.forward(idle + 1000);
    expect((await idler.get('/me')).status).toBe(401);
    const busy = someone();
    await comeBack(busy, words, more);
    const step = idle * 0.9;
    for (let passed = step; passed < whole; passed += step) {
      app.clock.forward(step);
      expect((await busy.get('/me')).status, String(passed)).toBe(200);
    }
    app.clock.forward(whole % step);
    app.clock.forward(1000);
    expect((await busy.get('/me')).status).toBe(401);
    app.clock.set(start.toISOString());
  });

  it.each([
    ['their own browser', {}, 12 * hour, 7 * 24 * hour],
    ['a shared computer', { shared: 'yes' }, hour, 12 * hour],
  ])('of staff on %s', async (_where, more, idle, whole) => {
    const start = app.clock.now();
    const come = async () => {
      const visitor = someone();
      await visitor.submit(await visitor.get('/sign-in'), '/sign-in', { name: 'Tessa', password, ...more });
      return visitor;
    };
    const idler = await come();
    app.clock.forward(idle + 1000);
    expect((await idler.get('/me')).status).toBe(401);
    const busy = await come();
    const step = idle * 0.9;
    for (let passed = step; passed < whole; passed += step) {
      app.clock.forward(step);
      expect((await busy.get('/me')).status, String(passed)).toBe(200);
    }
    app.clock.forward((whole % step) + 1000);
    expect((await busy.get('/me')).status).toBe(401);
    app.clock.set(start.toISOString());
  });

  it('on a shared computer the cookie goes with the browser, and what the browser keeps goes at sign-out', async () => {
    const words = await someone().start('Sharer');
    const [own, shared] = [someone(), someone()];
    expect(cookieLine(await comeBack(own, words))).toMatch(/Max-Age=34560000/);
    expect(cookieLine(await comeBack(shared, words, { shared: 'yes' }))).not.toMatch(/Max-Age|Expires/);
    const clears = async (visitor: Visitor) => (await visitor.submit(await visitor.get('/me'), '/me/sign-out')).headers['clear-site-data'];
    expect([await clears(own), await clears(shared)]).toEqual(['"cache"', '"cache", "storage"']);
  });

  it('whoever did not say so when coming in can say so later', async () => {
    const start = app.clock.now();
    const visitor = someone();
    await visitor.start('Later');
    const said = await visitor.submit(await visitor.get('/me'), '/me/shared');
    expect([said.location, cookieLine(said)]).toEqual(['/me', expect.not.stringMatching(/Max-Age|Expires/)]);
    expect((await visitor.get('/me')).words).not.toContain('Do others use this computer?');
    app.clock.forward(1.1 * hour);
    expect((await visitor.get('/me')).status).toBe(401);
    app.clock.set(start.toISOString());
  });

  it('a paper that runs keeps its session, whatever else would end it, and no longer', async () => {
    const start = app.clock.now();
    const words = await someone().start('Sitter');
    const visitor = someone();
    await comeBack(visitor, words, { shared: 'yes' });
    const [person] = await app.rows<{ id: number }>("SELECT id FROM person WHERE display_name = 'Sitter'");
    const begin = async (minutes: number) => {
      const [paper, sitting] = [crypto.randomUUID(), crypto.randomUUID()];
      await app.rows(
        `INSERT INTO paper (id, title, pack_id, pack_version, blueprint, region, seed, versions, made_by, made_at)
         SELECT $1, 'Long', id, '1', '{}', 'uk', 1, 1, $2, $3 FROM pack LIMIT 1`,
        [paper, person?.id, app.clock.now()],
      );
      await app.rows(
        `INSERT INTO sitting (id, paper_id, version, person_id, way, started_at, deadline_at) VALUES ($1, $2, 1, $3, 'screen', $4, $5)`,
        [sitting, paper, person?.id, app.clock.now(), new Date(app.clock.now().getTime() + minutes * 60_000)],
      );
    };
    // 600 minutes are the longest that a blueprint may give; with all the extra time there is it may be twenty hours.
    await begin(1200);
    app.clock.forward(19.9 * hour);
    await tidyAccounts(app.db, app.clock.now());
    expect((await visitor.get('/me')).status).toBe(200);
    app.clock.forward(0.2 * hour);
    expect((await visitor.get('/me')).status).toBe(401);
    app.clock.set(start.toISOString());
  });
});

describe('the list of one’s browsers', () => {
  it('shows each, and ends any of them by itself, and nobody else’s', async () => {
    const words = await someone().start('Lister');
    const [desk, phone, stranger] = [someone(), someone(), someone()];
    await comeBack(desk, words);
    await comeBack(phone, words, { shared: 'yes' });
    await stranger.start('Stranger');
    const page = await desk.get('/me');
    expect(page.words).toContain('This one');
    expect(page.words).toContain('Another, shared');
    const named = page.html.querySelectorAll('input[name=session]').map((input) => input.getAttribute('value') ?? '');
    expect(named).toHaveLength(2);
    for (const word of named) await endBy(stranger, word);
    expect((await phone.get('/me')).status).toBe(200);
    const words24 = createHash('sha256')
      .update(
        createHash('sha256')
          .update(phone.cookies.get('rungwise') ?? '')
          .digest(),
      )
      .digest('hex')
      .slice(0, 24);
    expect(named).toContain(words24);
    expect((await endBy(desk, words24)).location).toBe('/me');
    expect([(await phone.get('/me')).status, (await desk.get('/me')).status]).toEqual([401, 200]);
    expect((await endBy(desk, 'x')).status).toBe(400);
  });

  const endBy = async (visitor: Visitor, word: string): Promise<Shown> => {
    const csrf = (await visitor.get('/me')).html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    return await visitor.send('POST', '/me/sessions/end', { _csrf: csrf, session: word });
  };

  it('of staff leads to password and codes', async () => {
    expect((await tutor.get('/me')).html.querySelector('a[href="/me/security"]')).not.toBeNull();
  });
});
