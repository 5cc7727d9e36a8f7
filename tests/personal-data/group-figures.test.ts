import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { testApp, type TestApp, type Visitor } from '../support/app.js';
import { chooseIn, classOf, held, makeEvening, type TestClass } from '../support/evenings.js';
import { withBlueprint } from '../support/papers.js';

/** Figures of fewer than five people are shown to nobody who could not see the people themselves. Classes of one, of four and of five. */

let app: TestApp;
let own: TestClass;
beforeAll(async () => {
  app = await testApp({ start: '2026-11-25T19:00:00Z' });
  await withBlueprint(app);
  own = await classOf(app);
});
afterAll(() => app.close());
beforeEach(async () => {
  await app.rows('DELETE FROM evening');
  await app.rows(`DELETE FROM person WHERE role = 'candidate'`);
});

const names = ['Odo', 'Tansy', 'Wilf', 'Wren', 'Zelda'];

/** A class of so many, all of whom have answered the question that is open. */
async function answered(count: number): Promise<{ people: Visitor[]; evening: string; at: ReturnType<typeof held> }> {
  const people: Visitor[] = [];
  for (const name of names.slice(0, count)) people.push(await own.member(name));
  const evening = await makeEvening(own, { questions: 'AA-01-001' });
  const at = held(own, evening);
  await at.press('next');
  await at.press('open');
  for (const visitor of people) await chooseIn(visitor, evening, 'A');
  await at.press('close');
  return { people, evening, at };
}

describe('the counts of a class evening', () => {
  it.each([1, 4])('of %i on phones stand on the tutor’s own page and not before the class', async (count) => {
    const { at } = await answered(count);
    await at.press('show');
    const screen = await at.screen();
    expect(screen.html.querySelectorAll('.count')).toEqual([]);
    expect(screen.words).toContain(
      count === 1 ? '1 answer on a phone: too few to count here' : '4 answers on phones: too few to count here',
    );
    expect((await at.control()).words).toContain(`of ${count} right`);
  });

  it('of five stand before the class', async () => {
    const { at } = await answered(5);
    await at.press('show');
    expect(
      (await at.screen()).html
        .querySelectorAll('.count b')
        .map(({ text }) => Number(text.replace(/\D/g, '')))
        .reduce((a, b) => a + b),
    ).toBe(5);
  });

  it('of hands, which everybody saw, stand there whatever their number, and do not give the phones away', async () => {
    const { at } = await answered(4);
    await at.press('show', { 'hand-B': '2' });
    const screen = await at.screen();
    expect(
      screen.html
        .querySelectorAll('.count b')
        .map(({ text }) => Number(text.replace(/\D/g, '')))
        .sort(),
    ).toEqual([0, 0, 0, 2]);
    expect(screen.words).toContain('2 hands. 4 answers on phones: too few to count here');
  });

  it.each([1, 4, 5])('are on no phone, with %i in the class', async (count) => {
    const { people, evening, at } = await answered(count);
    await at.press('show');
    await at.press('end');
    for (const address of [`/evening/${evening}`, `/evening/${evening}/1`]) {
      const page = await (people[0] as Visitor).get(address);
      expect(page.status).toBe(200);
      expect(page.html.querySelectorAll('.count, .bar, meter, progress')).toEqual([]);
      expect(page.words).not.toMatch(/\d (answers?|of \d+ right|on phones|hands?)\b/);
    }
  });
});

describe('a candidate', () => {
  it.each([1, 4])('of a class of %i is refused every page that tells of the class, and meets no other’s name', async (count) => {
    const { people } = await answered(count);
    const [odo] = people as [Visitor];
    const routes = app.routes.routes.filter(
      ({ method, url }) => method === 'GET' && /^\/(classes|club|class-papers|people|upkeep|staff|queries)/.test(url),
    );
    expect(routes.length).toBeGreaterThan(20);
    for (const { url, access } of routes) {
      if (access === 'raise-query') continue;
      const { status } = await odo.get(url.replace(':class', String(own.classId)).replace(/:\w+/g, '1'));
      expect([url, status]).toEqual([url, 403]);
    }
    for (const address of [
      '/',
      '/my-classes',
      '/progress',
      '/outlook',
      '/plan',
      '/papers',
      '/report',
      '/skills',
      '/evening',
      '/me',
      '/me/data',
      '/me/data/all',
      '/me/data.json',
    ]) {
      const page = await odo.get(address);
      for (const other of names.slice(1)) expect(page.text, `${address}: ${other}`).not.toContain(other);
    }
  });
});

describe('a tutor', () => {
  it.each([1, 4])('sees the own class of %i by name, and the club as a whole from five people on', async (count) => {
    await answered(count);
    await app.rows('DELETE FROM topic_day');
    await app.rows(
      `UPDATE memory SET stability = 10, difficulty = 5, last_day = 20780, due_day = 20790, reps = 1 FROM question q WHERE q.id = question_id AND q.code LIKE 'AA%'`,
    );
    expect((await own.tutor.get(`/classes/${own.classId}`)).text).toContain('Odo');
    const club = await own.tutor.get('/club');
    expect(club.status).toBe(200);
    expect(club.text).toContain('Everybody, Topic AA: nothing to tell');
  });

  it('sees the figures of all from five on', async () => {
    await answered(5);
    await app.rows('DELETE FROM topic_day');
    await app.rows(
      `UPDATE memory SET stability = 10, difficulty = 5, last_day = 20780, due_day = 20790, reps = 1 FROM question q WHERE q.id = question_id AND q.code LIKE 'AA%'`,
    );
    expect((await own.tutor.get('/club')).text).toMatch(/Everybody, Topic AA: \d+ per cent, 5 people/);
  });
});
