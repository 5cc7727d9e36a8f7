import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { isSecret, newRecoveryCodes, newSecret, readTyped, secretAddress, stepOf } from '../../src/accounts/codes.js';
import { testApp, type Shown, type TestApp, type Visitor } from '../support/app.js';
import { codeAt, setUpCodes } from '../support/authenticator.js';
import { password, staffOf } from '../support/staff.js';

describe('one-time codes', () => {
  const secret = Buffer.from('12345678901234567890'); // RFC 4226 appendix D, RFC 6238 appendix B

  it.each(['755224', '287082', '359152', '969429', '338314', '254676', '287922', '162583', '399871', '520489'])(
    'are those of RFC 4226 appendix D: %s',
    (code) => {
      const counter = ['755224', '287082', '359152', '969429', '338314', '254676', '287922', '162583', '399871', '520489'].indexOf(code);
      expect(stepOf(secret, code, new Date(counter * 30_000 + 12_000))).toBe(counter);
    },
  );

  // The RFC prints eight figures for SHA-1; six-figure codes are their last six (RFC 4226 section 5.3).
  it.each([
    [59, '94287082'],
    [1_111_111_109, '07081804'],
    [1_111_111_111, '14050471'],
    [1_234_567_890, '89005924'],
    [2_000_000_000, '69279037'],
    [20_000_000_000, '65353130'],
  ])('are those of RFC 6238 appendix B at %d seconds', (seconds, code) => {
    expect(stepOf(secret, code.slice(2), new Date(seconds * 1000))).toBe(Math.floor(seconds / 30));
  });

  it('are taken a step early and a step late, and no further', () => {
    const at = (seconds: number) => stepOf(secret, '287082', new Date(seconds * 1000)); // step 1: 30 to 59 seconds
    expect([at(0), at(29), at(30), at(59), at(60), at(89), at(90)]).toEqual([1, 1, 1, 1, 1, 1, null]);
    expect(stepOf(secret, '287081', new Date(45_000))).toBeNull();
  });

  it('come from 160 bits, and the address for the QR code says so much and no more', () => {
    const made = newSecret();
    expect(isSecret(made)).toBe(true);
    expect(new Set(Array.from({ length: 50 }, newSecret)).size).toBe(50);
    const address = new URL(secretAddress(made, 'Alma <T>', 'Rungwise hut.local'));
    expect([address.protocol, address.host, address.searchParams.get('secret')]).toEqual(['otpauth:', 'totp', made]);
    expect([address.searchParams.get('algorithm'), address.searchParams.get('digits'), address.searchParams.get('period')]).toEqual([
      'SHA1',
      '6',
      '30',
    ]);
  });

  it('are read as people type them, and recovery codes too', () => {
    expect(readTyped(' 755 224 ')).toEqual({ kind: 'code', text: '755224' });
    expect(readTyped('７５５２２４')).toEqual({ kind: 'code', text: '755224' });
    const [one = ''] = newRecoveryCodes();
    expect(readTyped(`${one.slice(0, 4)} ${one.slice(4, 8)}-${one.slice(8).toLowerCase()}`)).toEqual({ kind: 'recovery', text: one });
    for (const text of ['', '75522', '7552244', 'O'.repeat(12), 'x'.repeat(100)]) expect(readTyped(text)).toEqual({ kind: 'neither' });
  });
});

describe('a second step at sign-in', () => {
  let app: TestApp;
  let tutor: Visitor;
  let administrator: Visitor;
  let secret: string;
  let recovery: string[];
  let addresses = 0;
  const someone = (): Visitor => app.visitor(`10.2.0.${(addresses += 1)}`);
  beforeAll(async () => {
    app = await testApp();
    ({ administrator, tutor } = await staffOf(app));
    ({ secret, recovery } = await setUpCodes(tutor, app.clock.now()));
  });
  afterAll(() => app.close());

  const later = (seconds = 30): void => app.clock.forward(seconds * 1000);
  const first = async (visitor: Visitor, more: Record<string, string> = {}): Promise<Shown> =>
    await visitor.submit(await visitor.get('/sign-in'), '/sign-in', { name: 'Tessa', password, ...more });
  const second = async (visitor: Visitor, code: string): Promise<Shown> =>
    await visitor.submit(await visitor.get('/sign-in/code'), '/sign-in/code', { code });

  it('gives no session for the password alone, and one for the code', async () => {
    later();
    const visitor = someone();
    const sent = await first(visitor);
    expect([sent.status, sent.location, visitor.cookies.has('rungwise')]).toEqual([303, '/sign-in/code', false]);
    expect((await visitor.get('/me')).status).toBe(401);
    const wrong = await second(visitor, codeAt(secret, app.clock.now(), 40));
    expect([wrong.status, visitor.cookies.has('rungwise')]).toEqual([422, false]);
    expect((await second(visitor, codeAt(secret, app.clock.now()))).location).toBe('/');
    expect((await visitor.get('/me')).status).toBe(200);
  });

  it('takes each code once, also on another browser, and none that is older than the last', async () => {
    later(90);
    const [one, two] = [someone(), someone()];
    await first(one);
    await first(two);
    const [older, code] = [codeAt(secret, app.clock.now(), -1), codeAt(secret, app.clock.now())];
    expect((await second(one, code)).status).toBe(303);
    const again = await first(two).then(() => second(two, code));
    expect([again.status, again.words]).toEqual([422, expect.stringContaining('works once')]);
    expect((await second(two, older)).status).toBe(422);
    later();
    expect((await second(two, codeAt(secret, app.clock.now()))).status).toBe(303);
  });

  it('lets one of two through who send one code at one moment', async () => {
    later(90);
    const both = [someone(), someone()];
    for (const visitor of both) await first(visitor);
    const code = codeAt(secret, app.clock.now());
    const pages = await Promise.all(both.map(async (visitor) => await visitor.get('/sign-in/code')));
    const sent = await Promise.all(both.map((visitor, index) => visitor.submit(pages[index] as Shown, '/sign-in/code', { code })));
    expect(sent.filter(({ location }) => location === '/')).toHaveLength(1);
  });

  it('takes each recovery code once, and keeps none as it is', async () => {
    const code = recovery[0] ?? '';
    const visitor = someone();
    await first(visitor);
    expect((await second(visitor, code.toLowerCase())).location).toBe('/');
    await first(visitor);
    expect((await second(visitor, code)).status).toBe(422);
    const [dump] = await app.rows<{ all: string }>("SELECT string_agg(r::text, ' ') AS all FROM recovery_code r");
    for (const one of recovery) {
      const plain = one.replaceAll(' ', '');
      expect(dump?.all.toLowerCase()).not.toContain(Buffer.from(plain).toString('hex'));
    }
    expect(await app.rows('SELECT 1 FROM recovery_code WHERE used_at IS NULL')).toHaveLength(9);
  });

  it('waits five minutes for the code, for this browser alone, and not for a made-up or changed word', async () => {
    const visitor = someone();
    await first(visitor);
    const word = visitor.cookies.get('rungwise-code') ?? '';
    const stranger = someone();
    const page = await first(stranger);
    expect(page.location).toBe('/sign-in/code');
    const [alma] = await app.rows<{ id: number }>("SELECT id FROM person WHERE sign_in_name = 'alma'");
    for (const forged of ['', 'x', word.replace(/^\d+/, String(alma?.id)), word.replace(/\.0\./, '.1.'), `${word.slice(0, -2)}aa`]) {
      stranger.cookies.set('rungwise-code', forged);
      expect((await stranger.get('/sign-in/code')).location).toBe('/sign-in');
    }
    later(301);
    expect((await visitor.get('/sign-in/code')).location).toBe('/sign-in');
    // Once a code was used, a word from before it is worth nothing.
    await first(visitor);
    const kept = visitor.cookies.get('rungwise-code') ?? '';
    later();
    await second(visitor, codeAt(secret, app.clock.now()));
    stranger.cookies.set('rungwise-code', kept);
    expect((await stranger.get('/sign-in/code')).location).toBe('/sign-in');
  });

  it('slows down guessing of codes, wherever from', async () => {
    later(901);
    const statuses: number[] = [];
    for (let i = 0; i < 11; i += 1) {
      const visitor = someone();
      await first(visitor);
      statuses.push((await second(visitor, codeAt(secret, app.clock.now(), 100 + i))).status);
    }
    expect(statuses).toEqual([...Array.from({ length: 10 }, () => 422), 429]);
    later(901);
    const visitor = someone();
    await first(visitor);
    expect((await second(visitor, codeAt(secret, app.clock.now()))).location).toBe('/');
  });

  it('is asked for after a new password by a link, too', async () => {
    await confirmed(administrator);
    const [tessa] = await app.rows<{ id: number }>("SELECT id FROM person WHERE sign_in_name = 'tessa'");
    const made = await administrator.submit(await administrator.get(`/staff/${tessa?.id}`), `/staff/${tessa?.id}/link`);
    const link = new URL(made.html.querySelector('.plate.must a')?.getAttribute('href') ?? '').pathname;
    const visitor = someone();
    const sent = await visitor.submit(await visitor.get(link), link, { password });
    expect([sent.location, visitor.cookies.has('rungwise')]).toEqual(['/sign-in/code', false]);
    later();
    expect((await second(visitor, codeAt(secret, app.clock.now()))).location).toBe('/');
    tutor = visitor;
  });

  const confirmed = async (visitor: Visitor): Promise<void> => {
    const page = await visitor.get('/confirm');
    expect((await visitor.submit(page, '/confirm', { password })).status).toBe(200);
  };

  it('is turned off with the password and a code, and not with a session alone', async () => {
    expect((await tutor.submit(await tutor.get('/me/security'), '/me/codes/off', { dropPassword: '', dropCode: '' })).status).toBe(422);
    later();
    const code = codeAt(secret, app.clock.now());
    const wrong = await tutor.submit(await tutor.get('/me/security'), '/me/codes/off', { dropPassword: 'wrong', dropCode: code });
    expect([wrong.status, wrong.words]).toEqual([422, expect.stringContaining('not your password')]);
    const none = await tutor.submit(await tutor.get('/me/security'), '/me/codes/off', { dropPassword: password, dropCode: '123' });
    expect([none.status, none.words]).toEqual([422, expect.stringContaining('does not fit')]);
    expect(await app.rows("SELECT 1 FROM person WHERE sign_in_name = 'tessa' AND totp_secret IS NOT NULL")).toHaveLength(1);
    const done = await tutor.submit(await tutor.get('/me/security'), '/me/codes/off', { dropPassword: password, dropCode: code });
    expect(done.location).toBe('/me/security?saved=off');
    expect((await first(someone())).location).toBe('/');
    expect(await app.rows('SELECT 1 FROM recovery_code')).toEqual([]);
  });

  it('can be asked of all staff: whoever has none sets it up before anything else', async () => {
    await confirmed(administrator);
    await administrator.submit(await administrator.get('/staff'), '/staff/codes');
    for (const path of ['/', '/classes/new', '/me', '/about']) expect((await tutor.get(path)).location, path).toBe('/me/codes');
    expect((await tutor.send('POST', '/classes', {})).status).toBe(403);
    const candidate = await app.candidate('Odo');
    expect((await candidate.get('/')).status).toBe(200);
    await setUpCodes(tutor, app.clock.now());
    expect((await tutor.get('/me')).status).toBe(200);
    expect((await administrator.get('/staff')).location).toBe('/me/codes');
    const own = await setUpCodes(administrator, app.clock.now());
    expect((await administrator.get('/staff')).status).toBe(200);
    later();
    // The password again asks for the code as well, once there are codes.
    app.clock.forward(16 * 60_000);
    const page = await administrator.get('/confirm?back=%2Fstaff');
    expect((await administrator.submit(page, '/confirm', { password })).status).toBe(422);
    const gone = await administrator.submit(page, '/confirm', { password, code: codeAt(own.secret, app.clock.now()) });
    expect([gone.status, gone.location]).toEqual([303, '/staff']);
  });

  it('is taken off by an administrator for whoever lost it, and stands in the list of changes', async () => {
    const [tessa] = await app.rows<{ id: number }>("SELECT id FROM person WHERE sign_in_name = 'tessa'");
    const page = await administrator.get(`/staff/${tessa?.id}`);
    expect((await administrator.submit(page, `/staff/${tessa?.id}/codes/remove`)).status).toBe(303);
    expect((await tutor.get('/me')).status).toBe(401);
    expect((await first(someone())).location).toBe('/');
    expect(await app.rows("SELECT about FROM staff_change WHERE what LIKE 'takes the one-time codes off%'")).toEqual([
      { about: { person: tessa?.id } },
    ]);
  });
});
