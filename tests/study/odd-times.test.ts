import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { packsService } from '../../src/packs/index.js';
import { enrolAll, replayAll } from '../../src/study/index.js';
import { answer, rightFields } from '../support/answering.js';
import { testApp, type TestApp, type Visitor } from '../support/app.js';
import { smallPack } from '../support/small-pack.js';

/** Time zones that change, clocks that jump, packs that lose questions: study goes on, and nothing is lost. */

const hour = 3_600_000;
let app: TestApp;
let visitor: Visitor;
beforeAll(async () => {
  app = await testApp({ start: '2026-11-25T19:00:00Z' });
});
afterAll(() => app.close());
beforeEach(async () => {
  app.clock.set('2026-11-25T19:00:00Z');
  visitor = await app.candidate();
});

/** Answers a whole round rightly. @returns how many questions it had */
async function study(): Promise<number> {
  const round = await visitor.round('20');
  let asked = 0;
  for (let page = await visitor.get(round); page.status === 200; page = await visitor.get(round), asked += 1)
    await answer(visitor, page, rightFields(page), 'fairly');
  return asked;
}

async function moveTo(timeZone: string): Promise<void> {
  const page = await visitor.get('/me');
  const name = page.html.querySelector('#name')?.getAttribute('value') ?? 'Odo';
  expect((await visitor.submit(page, '/me', { name, timeZone })).status).toBe(303);
}

async function recorded(): Promise<number | undefined> {
  const rows = await app.rows<{ n: number }>('SELECT count(*)::int AS n FROM answer WHERE person_id = (SELECT max(id) FROM person)');
  return rows[0]?.n;
}

/** Every page that looks at memories opens, and the record gives every memory anew. */
async function allIsWell(answers: number): Promise<void> {
  for (const path of ['/', '/plan', '/outlook', '/progress', '/progress/answers']) expect((await visitor.get(path)).status, path).toBe(200);
  expect(await recorded()).toBe(answers);
  expect((await replayAll(app.db, () => undefined)).differences).toEqual([]);
}

describe('a candidate who travels', () => {
  it('to where it is tomorrow already goes on from there', async () => {
    const first = await study();
    await moveTo('Pacific/Auckland');
    await allIsWell(first);
    app.clock.forward(72 * hour);
    const second = await study();
    expect(second).toBeGreaterThan(0);
    await allIsWell(first + second);
  });

  it('to where it is still yesterday, after midnight, is asked nothing twice for the same day', async () => {
    await moveTo('Pacific/Auckland');
    const first = await study(); // 26 November there
    await moveTo('Pacific/Honolulu'); // 25 November
    await allIsWell(first);
    const page = await visitor.get('/');
    expect(page.html.querySelector('button[name=minutes][value="20"]')).toBeNull();
    app.clock.forward(96 * hour);
    const second = await study();
    expect(second).toBeGreaterThan(0);
    await allIsWell(first + second);
  });
});

describe('a server’s clock that jumps', () => {
  it('back by three days loses nothing and counts no day as negative', async () => {
    const first = await study();
    app.clock.forward(-72 * hour);
    await allIsWell(first);
    app.clock.forward(24 * 5 * hour);
    const second = await study();
    expect(second).toBeGreaterThan(0);
    await allIsWell(first + second);
  });

  it('back in the middle of a round takes the answer all the same', async () => {
    const page = await visitor.get(await visitor.round('5'));
    app.clock.forward(-72 * hour);
    expect((await answer(visitor, page, rightFields(page))).status).toBe(200);
    expect(await recorded()).toBe(1);
  });
});

describe('a pack that loses questions', () => {
  it('leaves plan, outlook and progress standing, and every answer to be read', async () => {
    await visitor.submit(await visitor.get('/plan'), '/plan', { exam: '2026-12-08', minutes: '10' });
    const first = await study();
    const before = (await visitor.get('/progress/answers')).html.querySelectorAll('.bank li').length;
    const whole = smallPack();
    const gone = whole.questions.filter(({ id }) => id.startsWith('CC')).map(({ id }) => id);
    expect(gone.length).toBeGreaterThan(0);
    const head = { ...whole.head, version: '1.1.0' };
    await packsService({ db: app.db, enrolAll }).load({
      ...whole,
      head,
      questions: whole.questions.filter(({ id }) => !gone.includes(id)),
    });
    // As if another server had loaded it: what is kept in memory is a minute old at most.
    app.clock.forward(61_000);
    await allIsWell(first);
    const list = await visitor.get('/progress/answers');
    expect(list.html.querySelectorAll('.bank li')).toHaveLength(before);
    const link = list.html.querySelectorAll('.bank a').find(({ text }) => gone.some((code) => text.startsWith(code)));
    expect((await visitor.get(link?.getAttribute('href') ?? '')).status).toBe(200);
    expect((await visitor.get('/progress')).words).not.toContain(`${gone[0]?.slice(0, 5) ?? ''} `);
    app.clock.forward(72 * hour);
    const second = await study();
    await allIsWell(first + second);
  });
});
