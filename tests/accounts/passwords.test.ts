import { hash, type Algorithm } from '@node-rs/argon2';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { weaknessOf } from '../../src/accounts/passwords.js';
import { testApp, type TestApp, type Visitor } from '../support/app.js';
import { password, staffOf } from '../support/staff.js';

describe('whether a password would be guessed', () => {
  it.each([
    'password1234',
    'passwordpassword',
    'P@ssw0rd1234',
    'qwertyuiop12',
    'qwertyuiop[]',
    '1q2w3e4r5t6y',
    'aaaaaaaaaaaa',
    'abcabcabcabcabc',
    '123456789012',
    '12345 67890 1',
    'p.a.s.s.w.o.r.d.1.2',
    'Administrator1',
    'football2026',
    'rungwise2026',
    'rungwise rungwise',
    'netherwobbling',
    'Nether Wobbling',
    'Alma Thrupp 2026',
    'thruppalma12',
    `${'x'.repeat(128)}`,
  ])('%j is refused, with what to do instead', async (text) => {
    expect(await weaknessOf(text, ['Alma Thrupp'])).toMatch(/four or five words/);
  });

  it.each([
    'copper window gentle marble',
    'nine lanterns by the weir',
    'four kettles on a hill',
    'tr0mbone!gravel-Otter',
    'ключ под старым мостом',
    'a😀b🐟c🚲d🌧e🧦f🥔',
  ])('%j is taken', async (text) => {
    expect(await weaknessOf(text, ['Alma Thrupp'])).toBeNull();
  });

  it('is judged soon, whatever is typed', async () => {
    const least = async (text: string): Promise<number> => {
      const times: number[] = [];
      for (let i = 0; i < 4; i += 1) {
        const began = process.hrtime.bigint();
        await weaknessOf(text, ['Alma Thrupp']);
        times.push(Number(process.hrtime.bigint() - began) / 1e6);
      }
      return Math.min(...times);
    };
    // Four thousand letters cost what the forty cost that are judged, give or take what else the machine does.
    for (const text of ['p@55w0rd', '@4({[<631!|0$5+7%2', 'ab'])
      expect(await least(text.repeat(Math.ceil(4000 / text.length)))).toBeLessThan(50 + 6 * (await least(text.repeat(40).slice(0, 40))));
  });
});

describe('passwords', () => {
  let app: TestApp;
  let administrator: Visitor;
  beforeAll(async () => {
    app = await testApp();
    ({ administrator } = await staffOf(app));
  });
  afterAll(() => app.close());

  const signIn = async (name: string, secret: string, address: string): Promise<number> => {
    const visitor = app.visitor(address);
    return (await visitor.submit(await visitor.get('/sign-in'), '/sign-in', { name, password: secret })).status;
  };
  const change = async (visitor: Visitor, old: string, fresh: string) =>
    await visitor.submit(await visitor.get('/me/security'), '/me/security', { old, password: fresh });

  it('may have 128 letters and more of all kinds, and each of them counts', async () => {
    const long = `${'a wéïrd 😀 sentence, with "signs" & <more> of them; '.repeat(3)}and an ending Z`;
    expect([...long].length).toBeGreaterThan(128);
    expect((await change(administrator, password, long)).location).toBe('/me/security?saved=password');
    expect(await signIn('Alma', long, '10.1.0.1')).toBe(303);
    expect(await signIn('Alma', `${long.slice(0, -1)}Y`, '10.1.0.2')).toBe(422);
    expect(await signIn('Alma', long.toLowerCase(), '10.1.0.3')).toBe(422);
    expect((await change(administrator, long, password)).status).toBe(303);
  });

  it('that are short, common or the old one are refused at every form that takes one, and nothing is repeated', async () => {
    for (const [weak, why] of [
      ['eleven chars', 'four or five words'],
      ['short', '12 letters'],
      ['password1234', 'four or five words'],
      [password, 'the password you have'],
    ] as const) {
      const page = await change(administrator, password, weak);
      expect([page.status, page.words]).toEqual([422, expect.stringMatching(new RegExp(why, 'i'))]);
      expect(page.text).not.toContain(`value="${weak}"`);
    }
    const invited = await administrator.submit(await administrator.get('/staff'), '/staff', { name: 'Ludo Sedge', role: 'tutor' });
    const link = new URL(invited.html.querySelector('.plate.must a')?.getAttribute('href') ?? '').pathname;
    const ludo = app.visitor('10.1.0.4');
    const own = await ludo.submit(await ludo.get(link), link, { password: 'ludo sedge 1' });
    expect([own.status, own.words]).toEqual([422, expect.stringContaining('four or five words')]);
    expect((await ludo.submit(own, link, { password: 'copper window gentle marble' })).status).toBe(303);
  });

  it('asks for no sort of letters, and lets the browser paste and fill in', async () => {
    const page = await administrator.get('/me/security');
    expect(page.html.querySelectorAll('input[type=password]').map((input) => input.getAttribute('autocomplete'))).toEqual([
      'current-password',
      'new-password',
    ]);
    expect(page.text).not.toMatch(/onpaste|maxlength="\d+" autocomplete="(new|current)-password"/);
  });

  it('changed by their owner end all other sessions and links, and give the own session a new cookie', async () => {
    const tablet = app.visitor('10.1.0.5');
    await tablet.submit(await tablet.get('/sign-in'), '/sign-in', { name: 'Tessa', password });
    const desk = app.visitor('10.1.0.6');
    await desk.submit(await desk.get('/sign-in'), '/sign-in', { name: 'Tessa', password });
    const [tessa] = await app.rows<{ id: number }>("SELECT id FROM person WHERE sign_in_name = 'tessa'");
    const made = await administrator.submit(await administrator.get(`/staff/${tessa?.id}`), `/staff/${tessa?.id}/link`);
    const link = new URL(made.html.querySelector('.plate.must a')?.getAttribute('href') ?? '').pathname;
    const before = desk.cookies.get('rungwise') ?? '';
    expect((await change(desk, 'not the password', 'nine lanterns by the weir')).status).toBe(422);
    expect((await tablet.get('/me')).status).toBe(200);
    expect((await change(desk, password, 'nine lanterns by the weir')).status).toBe(303);
    expect((await desk.get('/me/security')).status).toBe(200);
    expect(desk.cookies.get('rungwise')).not.toBe(before);
    expect((await tablet.get('/me')).status).toBe(401);
    tablet.cookies.set('rungwise', before);
    expect((await tablet.get('/me')).status).toBe(401);
    expect((await app.visitor('10.1.0.7').get(link)).status).toBe(404);
    expect(await signIn('Tessa', password, '10.1.0.8')).toBe(422);
    expect(await signIn('Tessa', 'nine lanterns by the weir', '10.1.0.8')).toBe(303);
  });

  it('are hashed anew at sign-in when the settings have risen since', async () => {
    // Half the memory that OWASP's password storage guide gives as the least for two passes.
    const weaker = await hash('four kettles on a hill', { algorithm: 2 as Algorithm, memoryCost: 9728, timeCost: 2, parallelism: 1 });
    await app.rows("UPDATE person SET password_hash = $1 WHERE sign_in_name = 'tessa'", [weaker]);
    expect(await signIn('Tessa', 'four kettles on a hill', '10.1.0.9')).toBe(303);
    const [row] = await app.rows<{ hash: string }>("SELECT password_hash AS hash FROM person WHERE sign_in_name = 'tessa'");
    expect(row?.hash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
    expect(await signIn('Tessa', 'four kettles on a hill', '10.1.0.9')).toBe(303);
  });
});
