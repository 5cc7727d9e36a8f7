import { Writable } from 'node:stream';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { App } from '../../src/web/app.js';
import { Visitor } from '../support/app.js';
import { marker, wholeLife, type Life } from '../support/life.js';
import { password } from '../support/staff.js';

/** What the log holds of a whole day in which everything goes wrong that can: numbers, and no word that anybody typed. */

let life: Life;
let app: App;
const lines: string[] = [];
beforeAll(async () => {
  const stream = new Writable({ write: (chunk: Buffer, _encoding, done) => (lines.push(chunk.toString()), done()) });
  life = await wholeLife({ level: 'trace', stream });
  app = life.app;
}, 120_000);
afterAll(() => life.app.close());

const typed = {
  password: 'Zqpassword of the tutor',
  phrase: 'zqone zqtwo zqthree zqfour zqfive zqsix zqseven',
  code: 'ZQCD2345',
  answer: 'Zqtyped answer',
  name: 'Zqguest Vole',
};

/** Every word that stood in a field. */
const words = [...Object.values(marker), ...Object.values(typed), password, 'Zqsearch', 'Zqaddress', 'Zqcookie', 'Zqclass'];

describe('the log of a day', () => {
  it('has lines for what was refused, at the level of the club’s server and below', async () => {
    const { person, world } = life;
    const { tessa, ids } = world;
    const stranger = new Visitor(app, '10.7.7.7');
    await stranger.submit(await stranger.get('/sign-in'), '/sign-in', { name: marker.name, password: typed.password });
    await stranger.submit(await stranger.get('/return'), '/return', { phrase: typed.phrase });
    await stranger.submit(await stranger.get('/join'), '/join', { code: typed.code });
    await stranger.get(`/join/${typed.code}`);
    await stranger.get('/Zqaddress?text=Zqsearch');
    await stranger.get(`/invitation/Zqaddress`);
    await stranger.send('GET', '/', undefined, { cookie: 'rungwise=Zqcookie' });
    await stranger.send('POST', '/start', { name: typed.name });
    await person.get('/progress/answers?text=Zqsearch');
    await person.send('POST', '/study/answer', { value: typed.answer });
    const csrf = (await person.get('/me')).html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    for (const action of ['/study/answer', '/queries', '/me', '/study/rounds', '/plan', '/papers'])
      await person.send('POST', action, {
        _csrf: csrf,
        name: typed.name,
        value: typed.answer,
        body: marker.query,
        token: 'Zqaddress',
        timeZone: 'Zqaddress',
      });
    const own = (await tessa.get('/me')).html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    for (const action of [
      '/classes',
      `/classes/${ids.class}/people/class`,
      `/classes/${ids.class}/people/add`,
      '/class-papers',
      `${life.classPaper}/enter`,
    ])
      await tessa.send('POST', action, {
        _csrf: own,
        name: 'Zqclass',
        names: typed.name,
        title: 'Zqclass',
        candidate: 'guest',
        letters: typed.answer,
      });
    await tessa.get(`/bank?text=Zqsearch`);
    expect(lines.length).toBeGreaterThan(10);
    const levels = new Set(lines.flatMap((line) => line.trim().split('\n')).map((line) => (JSON.parse(line) as { level: number }).level));
    expect(levels.has(30)).toBe(true);
  });

  it('tells a failure of the server with the database’s own words and not those of a form', async () => {
    const [question] = await life.app.rows<{ id: number }>('SELECT id FROM question ORDER BY id LIMIT 1');
    const form = await life.person.get(`/queries/new?question=${question?.id}&revision=1`);
    await life.app.rows('ALTER TABLE query RENAME TO query_away');
    const failed = await life.person.submit(form, '/queries', { body: marker.query });
    await life.app.rows('ALTER TABLE query_away RENAME TO query');
    expect(failed.status).toBe(500);
    expect(lines.some((line) => line.includes('"level":50'))).toBe(true);
  });

  it('holds none of the words that were typed, no name, phrase, password, code, cookie or token', async () => {
    const whole = lines.join('');
    expect(words.filter((word) => whole.toLowerCase().includes(word.toLowerCase()))).toEqual([]);
    // The words of a phrase are plain ones, such as “page”, and one may stand in a log by chance; two beside each other do not.
    const pairs = life.phrase.slice(1).map((word, index) => `\\b${life.phrase[index]}\\W{1,6}${word}\\b`);
    expect(pairs.filter((pair) => new RegExp(pair, 'i').test(whole))).toEqual([]);
    const sessions = [life.person, life.world.tessa].flatMap((visitor) => [...visitor.cookies.values()]);
    expect(sessions.filter((value) => value.length > 10 && whole.includes(value))).toEqual([]);
    const [code] = await life.app.rows<{ code: string }>('SELECT join_code AS code FROM study_class WHERE join_code IS NOT NULL');
    expect(whole).not.toContain(code?.code);
  });

  it('keeps line breaks and control signs inside a line', () => {
    for (const line of lines.flatMap((each) => each.trim().split('\n'))) expect(() => JSON.parse(line) as unknown, line).not.toThrow();
  });
});
