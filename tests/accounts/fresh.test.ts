import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { testApp, type TestApp, type Visitor } from '../support/app.js';
import { password, staffOf } from '../support/staff.js';

let app: TestApp;
let administrator: Visitor;
let tutor: Visitor;
let tessa: number;
beforeAll(async () => {
  app = await testApp();
  ({ administrator, tutor } = await staffOf(app));
  tessa = (await app.rows<{ id: number }>("SELECT id FROM person WHERE sign_in_name = 'tessa'"))[0]?.id ?? 0;
});
afterAll(() => app.close());

const minutes = (count: number): void => app.clock.forward(count * 60_000);
const confirm = async (visitor: Visitor, back = ''): Promise<string | undefined> => {
  const page = await visitor.get(`/confirm?back=${encodeURIComponent(back)}`);
  return (await visitor.submit(page, '/confirm', { password })).location;
};

describe('what matters wants the password typed lately', () => {
  it.each(['/me/security', '/me/codes', '/staff', '/staff/1'])(
    '%s is shown for five minutes after it was typed, and then asks',
    async (path) => {
      await confirm(administrator);
      minutes(4.9);
      expect((await administrator.get(path)).status).not.toBe(303);
      minutes(0.2);
      const asked = await administrator.get(path);
      expect([asked.status, asked.location]).toEqual([303, `/confirm?back=${encodeURIComponent(path)}`]);
      expect(await confirm(administrator, path)).toBe(path);
      expect((await administrator.get(path)).status).not.toBe(303);
    },
  );

  it('every route says so that changes an account of staff, a password or a code', async () => {
    const changing = app.routes.routes.filter(({ method, url }) => method === 'POST' && /^\/(staff|me\/(security|codes))/.test(url));
    expect(changing.length).toBeGreaterThan(10);
    await confirm(administrator);
    const csrf = (await administrator.get('/staff')).html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    minutes(15.1);
    for (const { url } of changing) {
      const sent = await administrator.send('POST', url.replace(':person', String(tessa)), {
        _csrf: csrf,
        role: 'administrator',
        all: 'yes',
      });
      expect([sent.status, sent.words], url).toEqual([403, expect.stringContaining('Type your password again first')]);
      expect(sent.html.querySelector('.btn.go')?.getAttribute('href')).toBe('/confirm');
    }
    expect(await app.rows('SELECT role, closed_at FROM person WHERE id = $1', [tessa])).toEqual([{ role: 'tutor', closed_at: null }]);
  });

  it('a form that was opened in time may be sent for a quarter of an hour, and again after the password', async () => {
    await confirm(administrator);
    const page = await administrator.get('/staff');
    minutes(14.9);
    expect((await administrator.submit(page, '/staff', { name: 'Ludo', role: 'tutor' })).status).toBe(200);
    minutes(0.2);
    expect((await administrator.submit(page, '/staff', { name: 'Odile', role: 'tutor' })).status).toBe(403);
    await confirm(administrator);
    expect((await administrator.submit(page, '/staff', { name: 'Odile', role: 'tutor' })).status).toBe(200);
  });

  it('a session from before there was such a thing is asked', async () => {
    await app.rows('UPDATE session SET confirmed_at = NULL');
    expect((await administrator.get('/staff')).status).toBe(303);
    expect((await tutor.get('/me/security')).status).toBe(303);
  });

  it('a wrong password changes nothing, comes back with a reason, and is limited', async () => {
    const page = await tutor.get('/confirm?back=%2Fme%2Fsecurity');
    const wrong = await tutor.submit(page, '/confirm', { password: 'not the password' });
    expect([wrong.status, wrong.html.querySelector('input[name=back]')?.getAttribute('value')]).toEqual([422, '/me/security']);
    expect((await tutor.get('/me/security')).status).toBe(303);
    const statuses: number[] = [];
    for (let i = 0; i < 10; i += 1) statuses.push((await tutor.submit(page, '/confirm', { password: 'not the password' })).status);
    expect(statuses).toEqual([...Array.from({ length: 9 }, () => 422), 429]);
    minutes(10.1);
    expect(await confirm(tutor, '/me/security')).toBe('/me/security');
  });

  it.each([
    '//evil.invalid/staff',
    'https://evil.invalid/staff',
    '/\\evil.invalid',
    '/staff@evil.invalid',
    '/staff/1/../../x',
    '/phrase/kept',
    '/nowhere',
    'javascript:alert(1)',
    '/staff\r\nset-cookie: a=b',
    '/staff?a=b#x',
  ])('the password typed again never leads to %j', async (back) => {
    const page = await administrator.get(`/confirm?back=${encodeURIComponent(back)}`);
    expect(page.html.querySelector('input[name=back]')?.getAttribute('value')).toBe('');
    const sent = await administrator.submit(page, '/confirm', { password, back });
    expect([sent.status, sent.location]).toEqual([200, undefined]);
  });

  it('candidates have no password to be asked for, and no such pages', async () => {
    const candidate = await app.candidate('Odo');
    for (const path of ['/confirm', '/me/security', '/me/codes']) expect((await candidate.get(path)).status, path).toBe(403);
  });
});
