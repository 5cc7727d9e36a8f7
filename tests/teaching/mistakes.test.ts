import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { answer, isNumber, rightFields, stemOf, untilQuestion, wrongFields } from '../support/answering.js';
import { testApp, type TestApp, type Visitor } from '../support/app.js';
import { password, staffOf } from '../support/staff.js';

/** A tutor is told which questions somebody was sure of and wrong on, until they are right. */

let app: TestApp;
let tutor: Visitor;
beforeAll(async () => {
  app = await testApp({ start: '2026-11-25T19:00:00Z' });
  ({ tutor } = await staffOf(app));
  await app.rows(`WITH made AS (INSERT INTO study_class (name) VALUES ('Thursday beginners'), ('Somebody else’s') RETURNING id, name)
    INSERT INTO class_tutor (class_id, person_id) SELECT made.id, person.id FROM made, person WHERE made.name = 'Thursday beginners' AND person.role = 'tutor'`);
});
afterAll(() => app.close());

async function member(name: string, className: string): Promise<Visitor> {
  const visitor = await app.candidate(name);
  await app.rows(
    'INSERT INTO class_member (class_id, person_id) SELECT c.id, p.id FROM study_class c, person p WHERE c.name = $1 AND p.display_name = $2',
    [className, name],
  );
  return visitor;
}

const classHref = async (): Promise<string> => (await tutor.get('/')).html.querySelector('.ways a')?.getAttribute('href') ?? '';

const mistakes = async (): Promise<string[]> =>
  (await tutor.get(await classHref())).html.querySelectorAll('.bank li').map(({ text }) => text.replace(/\s+/g, ' ').trim());

describe('a sure wrong answer', () => {
  it('is told to the tutor of the class with question and name, and no longer once it was right; other classes are not told of', async () => {
    const odo = await member('Odo', 'Thursday beginners');
    await member('Wilf', 'Somebody else’s');
    expect(await mistakes()).toEqual([]);
    const page = await untilQuestion(odo, await odo.round('20'), (shown) => !isNumber(shown));
    await answer(odo, page, wrongFields(page), 'sure');
    const told = await mistakes();
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(/ Odo$/);
    const link = (await tutor.get(await classHref())).html.querySelector('.bank a')?.getAttribute('href') ?? '';
    expect((await tutor.get(link)).status).toBe(200);

    app.clock.forward(86_400_000);
    // A day ends the tutor's session, and the page of a stranger tells of no mistakes.
    await tutor.submit(await tutor.get('/sign-in'), '/sign-in', { name: 'Tessa', password });
    const again = await untilQuestion(odo, await odo.round('20'), (shown) => stemOf(shown) === stemOf(page));
    await answer(odo, again, rightFields(again), 'sure');
    expect(await mistakes()).toEqual([]);
  });

  it('is not told where somebody was not sure', async () => {
    const tansy = await member('Tansy', 'Thursday beginners');
    const page = await untilQuestion(tansy, await tansy.round('20'), (shown) => !isNumber(shown));
    await answer(tansy, page, wrongFields(page), 'fairly');
    expect(await mistakes()).toEqual([]);
  });

  it('of a candidate in another class stays with that class', async () => {
    const vane = await member('Vane', 'Somebody else’s');
    const page = await untilQuestion(vane, await vane.round('20'), (shown) => !isNumber(shown));
    await answer(vane, page, wrongFields(page), 'sure');
    expect(await mistakes()).toEqual([]);
  });
});
