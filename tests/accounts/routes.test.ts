import { createHash } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { testApp, type Shown, type TestApp, type Visitor } from '../support/app.js';

let app: TestApp;
beforeAll(async () => {
  app = await testApp();
});
afterAll(() => app.close());

const password = 'four kettles on a hill';
const heading = (page: Shown): string => page.html.querySelector('h1')?.text.trim() ?? '';
let addresses = 0;
/** Somebody from an address of their own, so that tests do not use up one another's tries. */
const someone = (): Visitor => app.visitor(`10.0.${Math.floor(addresses / 250)}.${(addresses += 1) % 250}`);

describe('a candidate', () => {
  it('comes in with a display name alone, and is shown seven words once', async () => {
    const visitor = someone();
    const words = await visitor.start('Zelda');
    expect(words).toHaveLength(7);
    await visitor.get('/phrase/kept');
    expect((await visitor.get('/phrase')).location).toBe('/me');
    const again = await visitor.get('/');
    expect(again.text).toContain('Zelda');
    expect((await visitor.get('/me')).words).not.toContain(words.slice(0, 2).join(' '));
  });

  it('comes back on another device with the phrase, typed as people type', async () => {
    const words = await someone().start('Mungo');
    const other = someone();
    const back = await other.submit(await other.get('/return'), '/return', { phrase: ` ${words.join(' - ').toUpperCase()}. ` });
    expect([back.status, back.location]).toEqual([303, '/']);
    expect((await other.get('/')).text).toContain('Mungo');
  });

  it('leaves no trace of the phrase or the cookie in the database, only hashes', async () => {
    const visitor = someone();
    const words = await visitor.start('Juniper');
    const cookie = visitor.cookies.get('rungwise') ?? '';
    const [dump] = await app.rows<{ people: string; sessions: string }>(
      `SELECT (SELECT string_agg(p::text, ' ') FROM person p) AS people, (SELECT string_agg(s::text, ' ') FROM session s) AS sessions`,
    );
    expect(dump?.people).not.toContain(words.join(' '));
    expect(dump?.sessions).not.toContain(Buffer.from(cookie).toString('hex'));
    expect(dump?.sessions).toContain(createHash('sha256').update(cookie).digest('hex'));
  });

  it('keeps the typed phrase in the form when it belongs to nobody, and learns which word is unknown', async () => {
    const visitor = someone();
    const phrase = 'zzzz qqqq apple';
    const page = await visitor.submit(await visitor.get('/return'), '/return', { phrase });
    expect(page.status).toBe(422);
    expect(page.html.querySelector('[name=phrase]')?.getAttribute('value') ?? page.html.querySelector('[name=phrase]')?.text).toBe(phrase);
  });

  it('sends the start form twice and is one person', async () => {
    const visitor = someone();
    const page = await visitor.get('/');
    const cookies = new Map(visitor.cookies);
    await visitor.submit(page, '/start', { name: 'Twice', timeZone: 'UTC' });
    visitor.cookies.clear();
    for (const [name, value] of cookies) visitor.cookies.set(name, value);
    const second = await visitor.submit(page, '/start', { name: 'Twice', timeZone: 'UTC' });
    expect(second.status).toBe(303);
    expect(await app.rows("SELECT id FROM person WHERE display_name = 'Twice'")).toHaveLength(1);
  });

  it.each([
    ['', 'Write what you want to be called'],
    ['   ', 'Write what you want to be called'],
    ['x'.repeat(41), 'too long'],
    ['a\u202eb', 'cannot be shown'],
  ])('with the name %j stays at the form and is told why', async (name, why) => {
    const visitor = someone();
    const page = await visitor.submit(await visitor.get('/'), '/start', { name });
    expect(page.status).toBe(422);
    expect(page.text).toContain(why);
  });

  it('makes a new phrase: the old one and the other browsers stop working', async () => {
    const visitor = someone();
    const old = await visitor.start('Renewer');
    const tablet = someone();
    await tablet.submit(await tablet.get('/return'), '/return', { phrase: old.join(' ') });
    const page = await visitor.get((await visitor.submit(await visitor.get('/me'), '/me/phrase')).location ?? '');
    // A reload shows the same words again, until their owner says they are written down.
    expect((await visitor.get('/phrase')).words).toBe(page.words);
    const fresh = page.html.querySelectorAll('.slip li').map((word) => word.text.trim());
    expect(fresh).not.toEqual(old);
    expect((await tablet.get('/me')).status).toBe(401);
    const other = someone();
    expect((await other.submit(await other.get('/return'), '/return', { phrase: old.join(' ') })).status).toBe(422);
    expect((await other.submit(await other.get('/return'), '/return', { phrase: fresh.join(' ') })).status).toBe(303);
  });

  it('changes name, region and time zone, and is enrolled in what the new region has', async () => {
    const visitor = someone();
    await visitor.start('Mover', { region: 'na' });
    const count = async () =>
      (
        await app.rows<{ n: number }>(
          "SELECT count(*)::int AS n FROM memory m JOIN person p ON p.id = m.person_id WHERE p.display_name LIKE 'Mover%'",
        )
      )[0]?.n;
    expect(await count()).toBe(6); // six fixed questions; both families of the small pack are not for North America
    const saved = await visitor.submit(await visitor.get('/me'), '/me', { name: 'Mover Two', region: 'uk', timeZone: 'Asia/Kolkata' });
    expect(saved.location).toBe('/me?saved=yes');
    expect(await count()).toBe(8);
    const refused = await visitor.submit(await visitor.get('/me'), '/me', { name: 'Mover Two', region: 'uk', timeZone: 'Nether/Wobbling' });
    expect(refused.status).toBe(422);
    expect(refused.html.querySelector('[name=timeZone]')?.getAttribute('value')).toBe('Nether/Wobbling');
  });
});

describe('sessions', () => {
  it('get a new cookie at sign-in, and a made-up cookie is never taken on', async () => {
    const visitor = someone();
    const planted = 'A'.repeat(32);
    visitor.cookies.set('rungwise', planted);
    expect((await visitor.get('/me')).status).toBe(401);
    await visitor.start('Fresh');
    expect(visitor.cookies.get('rungwise')).not.toBe(planted);
  });

  it('carry the flags that keep a cookie at home', async () => {
    const visitor = someone();
    const page = await visitor.submit(await visitor.get('/'), '/start', { name: 'Flags' });
    const cookie = [page.headers['set-cookie']].flat().find((text) => String(text).startsWith('rungwise='));
    expect(cookie).toMatch(/HttpOnly/);
    expect(cookie).toMatch(/SameSite=Lax/);
    expect(cookie).toMatch(/Path=\//);
  });

  it('end at sign-out, and everywhere when asked', async () => {
    const visitor = someone();
    const words = await visitor.start('Leaver');
    const tablet = someone();
    await tablet.submit(await tablet.get('/return'), '/return', { phrase: words.join(' ') });
    const kept = new Map(visitor.cookies);
    await visitor.submit(await visitor.get('/me'), '/me/sign-out');
    for (const [name, value] of kept) visitor.cookies.set(name, value);
    expect((await visitor.get('/me')).status).toBe(401);
    expect((await tablet.get('/me')).status).toBe(200);
    const phone = someone();
    await phone.submit(await phone.get('/return'), '/return', { phrase: words.join(' ') });
    await phone.submit(await phone.get('/me'), '/me/sign-out-everywhere');
    expect((await tablet.get('/me')).status).toBe(401);
  });

  it('end after 120 days without a visit, and are kept by a visit', async () => {
    const start = app.clock.now();
    const visitor = someone();
    await visitor.start('Sleeper');
    app.clock.forward(119 * 86_400_000);
    expect((await visitor.get('/me')).status).toBe(200);
    app.clock.forward(119 * 86_400_000);
    expect((await visitor.get('/me')).status).toBe(200);
    app.clock.forward(121 * 86_400_000);
    expect((await visitor.get('/me')).status).toBe(401);
    app.clock.set(start.toISOString());
  });
});

describe('staff', () => {
  it('the first administrator is made once, by the one-time link', async () => {
    const token = await app.accounts.setUpToken();
    const visitor = someone();
    const page = await visitor.get(`/set-up/${token}`);
    expect(page.status).toBe(200);
    const weak = await visitor.submit(page, `/set-up/${token}`, { name: 'Alma', password: 'short' });
    expect([weak.status, weak.html.querySelector('[name=name]')?.getAttribute('value')]).toEqual([422, 'Alma']);
    expect(weak.text).not.toContain('value="short"');
    const made = await visitor.submit(page, `/set-up/${token}`, { name: 'Alma', password });
    expect(made.status).toBe(303);
    expect((await visitor.get('/staff')).status).toBe(200);
    expect((await someone().get(`/set-up/${token}`)).status).toBe(404);
    expect(await app.accounts.setUpToken()).toBeNull();
    const [row] = await app.rows<{ hash: string }>("SELECT password_hash AS hash FROM person WHERE sign_in_name = 'alma'");
    expect(row?.hash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
  });

  it('a link that is not the one is not there', async () => {
    expect((await someone().get(`/set-up/${'x'.repeat(32)}`)).status).toBe(404);
    expect((await someone().get('/set-up/short')).status).toBe(404);
  });

  it('sign in with name and password, whatever the case of the name', async () => {
    const visitor = someone();
    const wrong = await visitor.submit(await visitor.get('/sign-in'), '/sign-in', { name: 'Alma', password: `${password}!` });
    expect([wrong.status, wrong.html.querySelector('[name=name]')?.getAttribute('value')]).toEqual([422, 'Alma']);
    expect((await visitor.submit(await visitor.get('/sign-in'), '/sign-in', { name: ' ALMA ', password })).status).toBe(303);
    expect((await visitor.get('/staff')).status).toBe(200);
  });

  it('an unknown name and a wrong password are answered alike', async () => {
    const [one, two] = [someone(), someone()];
    const strip = (page: Shown) => page.text.replace(/name="_csrf" value="[^"]*"/g, '').replace(/value="(Alma|Nobody)"/g, '');
    const wrong = await one.submit(await one.get('/sign-in'), '/sign-in', { name: 'Alma', password: 'not the password' });
    const unknown = await two.submit(await two.get('/sign-in'), '/sign-in', { name: 'Nobody', password: 'not the password' });
    expect(strip(unknown)).toBe(strip(wrong));
  });

  it('are invited by a one-time link and cannot be raised by a form', async () => {
    const admin = someone();
    await admin.submit(await admin.get('/sign-in'), '/sign-in', { name: 'alma', password });
    const page = await admin.submit(await admin.get('/staff'), '/staff', { name: 'Odo Brackle', role: 'tutor' });
    const link = /\/invitation\/[A-Za-z0-9_-]{32}/.exec(page.text)?.[0] ?? '';
    const tutor = someone();
    const form = await tutor.get(link);
    expect(form.text).toContain('Odo Brackle');
    expect((await tutor.submit(form, link, { password, role: 'administrator', name: 'Alma' })).status).toBe(303);
    expect((await tutor.get('/staff')).status).toBe(403);
    expect((await someone().get(link)).status).toBe(404);
    expect(heading(await tutor.get('/'))).toMatch(/class/i);
    const taken = await admin.submit(await admin.get('/staff'), '/staff', { name: 'odo brackle', role: 'tutor' });
    expect(taken.status).toBe(422);
  });

  it('an invitation that was not used can be made anew, and the older link then fails', async () => {
    const admin = someone();
    await admin.submit(await admin.get('/sign-in'), '/sign-in', { name: 'alma', password });
    const linkOf = (page: Shown) => /\/invitation\/[A-Za-z0-9_-]{32}/.exec(page.text)?.[0] ?? '';
    const invite = async () => linkOf(await admin.submit(await admin.get('/staff'), '/staff', { name: 'Late One', role: 'tutor' }));
    const [first, second] = [await invite(), await invite()];
    expect((await someone().get(first)).status).toBe(404);
    expect((await someone().get(second)).status).toBe(200);
    app.clock.forward(25 * 3_600_000);
    expect((await someone().get(second)).status).toBe(404);
    app.clock.forward(-25 * 3_600_000);
  });
});

describe('limits on guessing', () => {
  it('slow down one name at one address, say how long, and hold on another server too', async () => {
    const visitor = app.visitor('10.9.9.9');
    const form = await visitor.get('/sign-in');
    const tries = [];
    for (let i = 0; i < 9; i += 1)
      tries.push((await visitor.submit(form, '/sign-in', { name: 'alma', password: 'wrong wrong wrong' })).status);
    expect(tries).toEqual([422, 422, 422, 422, 422, 422, 422, 422, 429]);
    visitor.app = await app.another();
    const refused = await visitor.submit(form, '/sign-in', { name: 'alma', password });
    expect(refused.status).toBe(429);
    expect(Number(refused.headers['retry-after'])).toBeGreaterThan(0);
    const elsewhere = someone();
    expect((await elsewhere.submit(await elsewhere.get('/sign-in'), '/sign-in', { name: 'alma', password })).status).toBe(303);
    app.clock.forward(601_000);
    expect((await visitor.submit(form, '/sign-in', { name: 'alma', password })).status).toBe(303);
    app.clock.forward(-601_000);
  });

  it('let thirty people come in from one address within a minute', async () => {
    const statuses = await Promise.all(
      Array.from({ length: 30 }, async (_, i) => {
        const visitor = app.visitor('10.8.8.8');
        return (await visitor.submit(await visitor.get('/'), '/start', { name: `Pupil ${i}` })).status;
      }),
    );
    expect(new Set(statuses)).toEqual(new Set([303]));
  });

  it('take no notice of a forged forwarding header', async () => {
    const visitor = app.visitor('10.7.7.7');
    const form = await visitor.get('/sign-in');
    let last = 0;
    for (let i = 0; i < 9; i += 1) {
      const csrf = form.html.querySelector('form[action="/sign-in"] input[name=_csrf]')?.getAttribute('value') ?? '';
      last = (
        await visitor.send(
          'POST',
          '/sign-in',
          { _csrf: csrf, name: 'alma', password: 'wrong wrong wrong' },
          { 'x-forwarded-for': `10.1.1.${i}` },
        )
      ).status;
    }
    expect(last).toBe(429);
  });
});
