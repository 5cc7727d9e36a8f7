import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { testApp, type Shown, type TestApp, type Visitor } from '../support/app.js';
import { password, staffOf } from '../support/staff.js';

let app: TestApp;
let administrator: Visitor;
let tutor: Visitor;
let addresses = 0;
const someone = (): Visitor => app.visitor(`10.3.0.${(addresses += 1)}`);
beforeAll(async () => {
  app = await testApp();
  ({ administrator, tutor } = await staffOf(app));
});
afterAll(() => app.close());

const idOf = async (name: string): Promise<number> =>
  (await app.rows<{ id: number }>('SELECT id FROM person WHERE sign_in_name = $1', [name]))[0]?.id ?? 0;
const signIn = async (name: string, visitor: Visitor = someone(), secret = password): Promise<Shown> =>
  await visitor.submit(await visitor.get('/sign-in'), '/sign-in', { name, password: secret });
const act = async (visitor: Visitor, id: number, what: string, fields: Record<string, string> = {}): Promise<Shown> => {
  const csrf = (await visitor.get('/staff')).html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
  return await visitor.send('POST', `/staff/${id}/${what}`, { _csrf: csrf, ...fields });
};
const linkOf = (page: Shown): string => page.html.querySelector('.plate.must a')?.getAttribute('href') ?? '';

describe('closing an account of staff', () => {
  it('ends its sessions at once and answers a sign-in as a wrong password does; opened again it is as before', async () => {
    const id = await idOf('tessa');
    expect((await tutor.get('/me')).status).toBe(200);
    expect((await act(administrator, id, 'close')).location).toBe(`/staff/${id}`);
    expect((await tutor.get('/me')).status).toBe(401);
    const strip = ({ text }: Shown) => text.replace(/name="_csrf" value="[^"]*"/g, '');
    const [closed, wrong] = [await signIn('Tessa'), await signIn('Tessa', someone(), 'not the password')];
    expect([closed.status, strip(closed)]).toEqual([422, strip(wrong)]);
    expect((await administrator.get(`/staff/${id}`)).words).toContain('Closed since');
    // Twice sent is once done.
    expect((await act(administrator, id, 'close')).status).toBe(303);
    expect((await act(administrator, id, 'reopen')).status).toBe(303);
    expect((await tutor.get('/me')).status).toBe(401);
    expect((await signIn('Tessa', tutor)).location).toBe('/');
  });

  it('kills a link that lies about, and a new one cannot be made until it is open', async () => {
    const id = await idOf('tessa');
    const link = new URL(linkOf(await act(administrator, id, 'link'))).pathname;
    expect((await someone().get(link)).status).toBe(200);
    await act(administrator, id, 'close');
    expect((await someone().get(link)).status).toBe(404);
    expect((await act(administrator, id, 'link')).location).toBe(`/staff/${id}`);
    await act(administrator, id, 'reopen');
    expect((await someone().get(link)).status).toBe(404);
    await signIn('Tessa', tutor);
  });
});

describe('roles', () => {
  it('hold at once, under a new session: the old one is dead', async () => {
    const id = await idOf('tessa');
    const before = tutor.cookies.get('rungwise') ?? '';
    await act(administrator, id, 'role', { role: 'administrator' });
    expect((await tutor.get('/staff')).status).toBe(401);
    await signIn('Tessa', tutor);
    expect(tutor.cookies.get('rungwise')).not.toBe(before);
    expect((await tutor.get('/staff')).status).toBe(200);
    await act(administrator, id, 'role', { role: 'tutor' });
    expect((await tutor.get('/staff')).status).toBe(401);
    await signIn('Tessa', tutor);
    expect((await tutor.get('/staff')).status).toBe(403);
  });

  it('are read anew with every request, should a session outlive them', async () => {
    const id = await idOf('tessa');
    await app.rows("UPDATE person SET role = 'administrator' WHERE id = $1", [id]);
    expect((await tutor.get('/staff')).status).toBe(200);
    await app.rows("UPDATE person SET role = 'tutor' WHERE id = $1", [id]);
    expect((await tutor.get('/staff')).status).toBe(403);
  });

  it('nobody changes their own, nor what they are not: by no form, and with no field', async () => {
    const [alma, tessa] = [await idOf('alma'), await idOf('tessa')];
    for (const what of ['role', 'close', 'reopen', 'codes/remove'])
      expect((await act(administrator, alma, what, { role: 'tutor' })).status, what).toBe(403);
    expect(await app.rows('SELECT role, closed_at FROM person WHERE id = $1', [alma])).toEqual([
      { role: 'administrator', closed_at: null },
    ]);
    const csrf = (await tutor.get('/me')).html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    expect((await tutor.send('POST', `/staff/${tessa}/role`, { _csrf: csrf, role: 'administrator' })).status).toBe(403);
    await tutor.submit(await tutor.get('/me'), '/me', { name: 'Tessa', timeZone: 'UTC', role: 'administrator', closedAt: '', id: '1' });
    expect(await app.rows('SELECT role FROM person WHERE id = $1', [tessa])).toEqual([{ role: 'tutor' }]);
    expect((await act(administrator, tessa, 'role', { role: 'candidate' })).status).toBe(400);
  });

  it('candidates, and people who are not there, are not found', async () => {
    await app.candidate('Odo');
    const [odo] = await app.rows<{ id: number }>("SELECT id FROM person WHERE role = 'candidate' LIMIT 1");
    const shown = (page: Shown) => [page.status, page.text.replace(/name="_csrf" value="[^"]*"/g, '')];
    const nobody = shown(await administrator.get('/staff/999999'));
    expect(shown(await administrator.get(`/staff/${odo?.id}`))).toEqual(nobody);
    for (const what of ['role', 'close', 'reopen', 'link', 'sign-out', 'codes/remove'])
      expect((await act(administrator, odo?.id ?? 0, what, { role: 'administrator' })).status, what).toBe(404);
    expect(
      await app.rows("SELECT 1 FROM person WHERE role = 'candidate' AND (closed_at IS NOT NULL OR invitation_hash IS NOT NULL)"),
    ).toEqual([]);
  });

  it('of two administrators who demote or close each other at one moment, one stays', async () => {
    const [alma, tessa] = [await idOf('alma'), await idOf('tessa')];
    for (const what of ['role', 'close', 'role', 'close', 'role']) {
      await app.rows("UPDATE person SET role = 'administrator', closed_at = NULL WHERE id = ANY ($1)", [[alma, tessa]]);
      await signIn('Alma', administrator);
      await signIn('Tessa', tutor);
      const csrfs = await Promise.all(
        [administrator, tutor].map(
          async (who) => (await who.get('/staff')).html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '',
        ),
      );
      const send = (who: Visitor, csrf: string | undefined, id: number) =>
        who.send('POST', `/staff/${id}/${what}`, { _csrf: csrf ?? '', role: 'tutor' });
      const statuses = (await Promise.all([send(administrator, csrfs[0], tessa), send(tutor, csrfs[1], alma)])).map(({ status }) => status);
      // The second is refused as an administrator no longer; it may also find its session gone.
      expect(statuses.filter((status) => status === 303)).toHaveLength(1);
      expect(await app.rows("SELECT 1 FROM person WHERE role = 'administrator' AND closed_at IS NULL")).toHaveLength(1);
    }
    await app.rows("UPDATE person SET closed_at = NULL, role = CASE id WHEN $1 THEN 'administrator' ELSE 'tutor' END WHERE id = ANY ($2)", [
      alma,
      [alma, tessa],
    ]);
    await signIn('Alma', administrator);
    await signIn('Tessa', tutor);
  });
});

describe('a link for a forgotten password', () => {
  it('works once, for an hour, is kept as a hash, and lets the old password work until then', async () => {
    const id = await idOf('tessa');
    const made = await act(administrator, id, 'link');
    const link = new URL(linkOf(made)).pathname;
    expect(made.words).toContain('Give this link to Tessa');
    expect((await administrator.get(`/staff/${id}`)).text).not.toContain(link);
    const [dump] = await app.rows<{ people: string }>("SELECT string_agg(p::text, ' ') AS people FROM person p");
    expect(dump?.people).not.toContain(link.split('/').at(-1));
    expect((await signIn('Tessa')).status).toBe(303);
    const visitor = someone();
    const page = await visitor.get(link);
    expect(page.words).toContain('Choose a new password');
    const sent = await visitor.submit(page, link, { password: 'copper window gentle marble' });
    expect([sent.status, sent.location]).toEqual([303, '/']);
    expect((await tutor.get('/me')).status).toBe(401);
    expect((await someone().get(link)).status).toBe(404);
    expect((await someone().submit(page, link, { password: 'nine lanterns by the weir' })).status).toBeGreaterThanOrEqual(403);
    expect((await signIn('Tessa')).status).toBe(422);
    const late = new URL(linkOf(await act(administrator, id, 'link'))).pathname;
    app.clock.forward(59 * 60_000);
    expect((await someone().get(late)).status).toBe(200);
    app.clock.forward(2 * 60_000);
    expect((await someone().get(late)).status).toBe(404);
    app.clock.forward(-61 * 60_000);
    await app.rows("UPDATE person SET password_hash = (SELECT password_hash FROM person WHERE sign_in_name = 'alma') WHERE id = $1", [id]);
    await signIn('Tessa', tutor);
  });

  it('is built from the address that is set, whatever the request says of its host', async () => {
    const secure = await testApp({ origin: 'https://study.example' });
    const link = `/set-up/${(await secure.accounts.setUpToken()) ?? ''}`;
    const alma = secure.visitor('10.0.0.1');
    await alma.submit(await alma.get(link), link, { name: 'Alma', password });
    const page = await alma.get('/staff');
    const csrf = page.html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    const forged = {
      host: 'evil.invalid',
      'x-forwarded-host': 'evil.invalid',
      'x-forwarded-proto': 'http',
      forwarded: 'host=evil.invalid',
    };
    const invited = await alma.send('POST', '/staff', { _csrf: csrf, name: 'Tessa', role: 'tutor' }, forged);
    expect([invited.status, linkOf(invited)]).toEqual([200, expect.stringMatching(/^https:\/\/study\.example\/invitation\/[\w-]{32}$/)]);
    const [tessa] = await secure.rows<{ id: number }>("SELECT id FROM person WHERE sign_in_name = 'tessa'");
    const renewed = await alma.send('POST', `/staff/${tessa?.id}/link`, { _csrf: csrf }, forged);
    expect(linkOf(renewed)).toMatch(/^https:\/\/study\.example\/invitation\//);
    const codes = await alma.send('GET', '/me/codes', undefined, forged);
    for (const shown of [invited, renewed, codes]) expect(shown.text).not.toContain('evil.invalid');
    await secure.close();
  });
});

describe('sessions of staff', () => {
  it('are ended by an administrator one by one, or all', async () => {
    const id = await idOf('tessa');
    const [desk, phone] = [someone(), someone()];
    await signIn('Tessa', desk);
    app.clock.forward(1000);
    await signIn('Tessa', phone);
    const page = await administrator.get(`/staff/${id}`);
    const words = page.html.querySelectorAll('input[name=session]').map((input) => input.getAttribute('value') ?? '');
    expect(words.length).toBeGreaterThanOrEqual(3);
    expect((await act(administrator, id, 'sessions/end', { session: words[0] ?? '' })).status).toBe(303);
    expect([(await phone.get('/me')).status, (await desk.get('/me')).status]).toEqual([401, 200]);
    await act(administrator, id, 'sign-out');
    expect((await desk.get('/me')).status).toBe(401);
    await signIn('Tessa', tutor);
  });

  it('what was done about staff stands in the list of changes, by numbers', async () => {
    const rows = await app.rows<{ what: string; about: object; role: string }>('SELECT what, about, role FROM staff_change');
    const tessa = await idOf('tessa');
    for (const [what, about] of [
      ['changes the role of a member of staff', { person: tessa, to: 'administrator' }],
      ['closes an account of staff', { person: tessa }],
      ['opens an account of staff again', { person: tessa }],
      ['makes a link for a new password', { person: tessa }],
      ['invites a member of staff, or makes a new link for one', { person: tessa }],
    ] as const)
      expect(rows).toContainEqual({ what, about, role: 'administrator' });
  });
});
