import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { testApp, type Shown, type TestApp, type Visitor } from '../support/app.js';
import { password, staffOf } from '../support/staff.js';

/** How often the slow hash was worked: what an answer costs, counted and not timed. */
const work = vi.hoisted(() => ({ hashes: 0, checks: 0 }));
vi.mock('@node-rs/argon2', async (original) => {
  const real = await original<typeof import('@node-rs/argon2')>();
  return {
    ...real,
    hash: (...args: Parameters<typeof real.hash>) => ((work.hashes += 1), real.hash(...args)),
    hashRaw: (...args: Parameters<typeof real.hashRaw>) => ((work.hashes += 1), real.hashRaw(...args)),
    verify: (...args: Parameters<typeof real.verify>) => ((work.checks += 1), real.verify(...args)),
  };
});

let app: TestApp;
let administrator: Visitor;
let addresses = 0;
const lines: Record<string, unknown>[] = [];
const someone = (): Visitor => app.visitor(`10.5.${addresses >> 8}.${(addresses += 1) & 255}`);
beforeAll(async () => {
  app = await testApp({ logger: { level: 'info', stream: { write: (line: string) => void lines.push(JSON.parse(line)) } } });
  ({ administrator } = await staffOf(app));
});
afterAll(() => app.close());

/** Status, headers and body, but for what is different in every answer. */
function bare({ status, headers, text }: Shown, typed: readonly string[] = []): unknown {
  const { date: _date, 'content-length': _length, 'set-cookie': _cookie, ...rest } = headers;
  const body = text.replace(/name="_csrf" value="[^"]*"/g, '').replace(/action="\/(set-up|invitation)\/[\w-]*"/g, '');
  return { status, headers: rest, body: typed.reduce((cut, word) => cut.replaceAll(word, '…'), body) };
}

const send = async (path: string, fields: Record<string, string>, visitor = someone()): Promise<Shown> =>
  await visitor.submit(await visitor.get(path), path, fields);

async function closedOne(): Promise<void> {
  const invited = await administrator.submit(await administrator.get('/staff'), '/staff', { name: 'Ludo', role: 'tutor' });
  const link = new URL(invited.html.querySelector('.plate.must a')?.getAttribute('href') ?? '').pathname;
  const ludo = someone();
  await ludo.submit(await ludo.get(link), link, { password });
  await app.rows("UPDATE person SET closed_at = now() WHERE sign_in_name = 'ludo'");
}

describe('what is known is answered as what is not', () => {
  beforeEach(() => Object.assign(work, { hashes: 0, checks: 0 }));

  it('a sign-in with a name that nobody has, or that has no password yet, or is closed', async () => {
    await closedOne();
    await administrator.submit(await administrator.get('/staff'), '/staff', { name: 'Invited', role: 'tutor' });
    const answers: unknown[] = [];
    const costs: unknown[] = [];
    await send('/sign-in', { name: 'Tessa', password: 'warm up the hash' });
    for (const [name, secret] of [
      ['Tessa', 'not the password'],
      ['Nobody', 'not the password'],
      ['Invited', 'not the password'],
      ['Ludo', 'not the password'],
      ['Ludo', password],
    ] as const) {
      Object.assign(work, { hashes: 0, checks: 0 });
      answers.push(bare(await send('/sign-in', { name, password: secret }), [name]));
      costs.push({ ...work });
    }
    expect(new Set(answers.map((answer) => JSON.stringify(answer))).size).toBe(1);
    expect(costs).toEqual(Array.from({ length: 5 }, () => ({ hashes: 0, checks: 1 })));
    expect((answers[0] as { status: number }).status).toBe(422);
  });

  it('the first sign-in after a start, too, whether the name is known or not', async () => {
    vi.resetModules();
    const { passwordMatches, hashPassword } = await import('../../src/platform/password.js');
    const stored = await hashPassword('four kettles on a hill');
    const cost = async (hash: string | null) => {
      vi.resetModules();
      const fresh = await import('../../src/platform/password.js');
      Object.assign(work, { hashes: 0, checks: 0 });
      expect(await fresh.passwordMatches(hash, 'not the password')).toBe(false);
      return { ...work };
    };
    expect(await cost(null)).toEqual(await cost(stored));
    expect(await passwordMatches(stored, 'four kettles on a hill')).toBe(true);
  });

  it('a return phrase of words from the list that belong to nobody costs what a right one costs', async () => {
    const words = await someone().start('Odo');
    const other = await someone().start('Tansy');
    const mixed = [...words.slice(0, 4), ...other.slice(4)];
    Object.assign(work, { hashes: 0, checks: 0 });
    const wrong = await send('/return', { phrase: mixed.join(' ') });
    expect([wrong.status, { ...work }]).toEqual([422, { hashes: 1, checks: 0 }]);
    Object.assign(work, { hashes: 0, checks: 0 });
    expect([(await send('/return', { phrase: words.join(' ') })).status, { ...work }]).toEqual([303, { hashes: 1, checks: 0 }]);
  });

  it('links that were used, ran out, were replaced or never were', async () => {
    const invite = async (name: string) => {
      const page = await administrator.submit(await administrator.get('/staff'), '/staff', { name, role: 'tutor' });
      return new URL(page.html.querySelector('.plate.must a')?.getAttribute('href') ?? '').pathname;
    };
    const used = await invite('Used');
    await send(used, { password });
    const [replaced] = [await invite('Replaced'), await invite('Replaced')];
    const late = await invite('Late');
    await app.rows("UPDATE person SET invitation_expires_at = '2026-01-01' WHERE sign_in_name = 'late'");
    const links = [used, replaced, late, `/invitation/${'x'.repeat(32)}`, `/set-up/${'x'.repeat(32)}`];
    const answers = await Promise.all(links.map(async (link) => JSON.stringify(bare(await someone().get(link)))));
    expect(new Set(answers).size).toBe(1);
    expect(answers[0]).toContain('This link opens nothing any more');
  });
});

describe('limits on guessing', () => {
  it('stop twenty wrong passwords and the right one after them, from that address alone', async () => {
    const visitor = app.visitor('10.6.0.1');
    const form = await visitor.get('/sign-in');
    const statuses: number[] = [];
    for (let i = 0; i < 20; i += 1)
      statuses.push((await visitor.submit(form, '/sign-in', { name: 'Tessa', password: `wrong wrong ${i}` })).status);
    expect(statuses.filter((status) => status === 422)).toHaveLength(8);
    expect(statuses.slice(8).every((status) => status === 429)).toBe(true);
    const right = await visitor.submit(form, '/sign-in', { name: 'Tessa', password });
    expect([right.status, Number(right.headers['retry-after']) > 0]).toEqual([429, true]);
    // Whoever owns the account comes in from elsewhere: a stranger cannot lock it.
    expect((await send('/sign-in', { name: 'Tessa', password }, app.visitor('10.6.0.2'))).status).toBe(303);
  });

  it('let thirty people behind one address come back and sign in within one minute', async () => {
    const phrases: string[][] = [];
    for (let i = 0; i < 30; i += 1) phrases.push(await someone().start(`Pupil ${i}`));
    const back = await Promise.all(
      phrases.map(async (words) => (await send('/return', { phrase: words.join(' ') }, app.visitor('10.6.0.3'))).status),
    );
    expect(back).toEqual(Array.from({ length: 30 }, () => 303));
    const signed: number[] = [];
    for (let i = 0; i < 30; i += 1) signed.push((await send('/sign-in', { name: 'Tessa', password }, app.visitor('10.6.0.3'))).status);
    expect(signed).toEqual(Array.from({ length: 30 }, () => 303));
  });

  it('count a forged forwarding header for nothing, at every way in', async () => {
    for (const [path, fields, most] of [
      ['/sign-in', { name: 'Alma', password: 'wrong wrong wrong' }, 8],
      ['/return', { phrase: [...(await someone().start('Words'))].reverse().join(' ') }, 30],
    ] as const) {
      const visitor = app.visitor(`10.6.1.${most}`);
      const csrf = (await visitor.get(path)).html.querySelector(`form[action="${path}"] input[name=_csrf]`)?.getAttribute('value') ?? '';
      const statuses: number[] = [];
      for (let i = 0; i <= most; i += 1)
        statuses.push(
          (await visitor.send('POST', path, { _csrf: csrf, ...fields }, { 'x-forwarded-for': `10.7.7.${i}`, forwarded: `for=10.7.8.${i}` }))
            .status,
        );
      expect(statuses.at(-1), path).toBe(429);
      expect(statuses.slice(0, -1).every((status) => status === 422)).toBe(true);
    }
  });
});

describe('the log', () => {
  it('says who came in, was refused and left by number, and holds no name, phrase, password, code or link', async () => {
    lines.length = 0;
    const [tessa] = await app.rows<{ id: number }>("SELECT id FROM person WHERE sign_in_name = 'tessa'");
    const tutor = someone();
    await send('/sign-in', { name: 'Tessa', password: 'Marker Wrong Password' }, tutor);
    await send('/sign-in', { name: 'Marker Unknown Name', password: 'Marker Wrong Password' });
    await send('/sign-in', { name: 'Tessa', password }, tutor);
    await tutor.submit(await tutor.get('/me'), '/me/sign-out');
    const candidate = someone();
    const phrase = await candidate.start('Marker Candidate');
    await send('/return', { phrase: phrase.join(' ') });
    await send('/return', { phrase: [...phrase].reverse().join(' ') });
    const form = await tutor.get('/sign-in');
    for (let i = 0; i < 9; i += 1) await tutor.submit(form, '/sign-in', { name: 'Tessa', password: 'Marker Wrong Password' });
    await app.visitor('10.6.2.1').get(`/invitation/${'M'.repeat(32)}`);
    const said = lines.map(({ msg, person, code, detail }) => [msg, person ?? code, detail].filter((part) => part !== undefined).join(' '));
    for (const line of [
      `sign-in refused ${tessa?.id}`,
      'sign-in refused',
      `signed in ${tessa?.id}`,
      `signed out ${tessa?.id}`,
      'coming back refused',
      'request refused too-many-tries limit password-of',
    ])
      expect(said).toContain(line);
    expect(said.some((line) => /^came in \d+$/.test(line))).toBe(true);
    expect(said.some((line) => /^came back \d+$/.test(line))).toBe(true);
    const all = JSON.stringify(lines);
    for (const marker of ['Marker', 'Tessa', 'tessa', password, phrase.join(' '), phrase.join('-'), 'M'.repeat(32)])
      expect(all).not.toContain(marker);
  });
});
