import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { testApp, type TestApp, type Visitor } from '../support/app.js';
import { chooseIn, classOf, held, makeEvening, type TestClass } from '../support/evenings.js';

/** Two classes and everybody's roles: nothing of one class is there for another's people. */

let app: TestApp;
let own: TestClass;
let evening: string;
let others: { classId: number; evening: string; member: Visitor };
beforeAll(async () => {
  app = await testApp({ start: '2026-11-25T19:00:00Z' });
  own = await classOf(app);
  evening = await makeEvening(own, { questions: 'AA-01-001 BB-01-001' });
  const [made] = await app.rows<{ id: number }>(`INSERT INTO study_class (name) VALUES ('Somebody else’s') RETURNING id`);
  const classId = made?.id ?? 0;
  const theirs = { ...own, classId, tutor: own.administrator };
  const theirEvening = await makeEvening(theirs, { title: 'Secret evening', questions: 'AA-02-001' });
  const member = await app.candidate('Wilf');
  await app.rows(`INSERT INTO class_member (class_id, person_id) SELECT $1, id FROM person WHERE display_name = 'Wilf'`, [classId]);
  others = { classId, evening: theirEvening, member };
  await held(own, evening).press('next');
  await held(own, evening).press('open');
  await held(theirs, theirEvening).press('next');
  await held(theirs, theirEvening).press('open');
});
afterAll(() => app.close());

const ways = ['', '/screen', '/events'];

describe('a tutor', () => {
  it('finds another class’s evenings as if they did not exist, also under the own class’s address', async () => {
    for (const way of ways) {
      for (const address of [
        `/classes/${others.classId}/evenings/${others.evening}${way}`,
        `/classes/${own.classId}/evenings/${others.evening}${way}`,
      ])
        expect((await own.tutor.get(address)).status, address).toBe(404);
    }
    expect((await own.tutor.get(`/classes/${others.classId}/evenings`)).status).toBe(404);
    expect((await own.tutor.get('/classes/999/evenings')).text.replace(/value="[^"]*"/g, '')).toBe(
      (await own.tutor.get(`/classes/${others.classId}/evenings`)).text.replace(/value="[^"]*"/g, ''),
    );
    expect((await own.tutor.get(`/classes/${own.classId}/evenings`)).text).not.toContain('Secret evening');
  });

  it('cannot take a step in it, count hands in it, nor make one there', async () => {
    const csrf = (await held(own, evening).control()).html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    for (const classId of [others.classId, own.classId])
      for (const fields of [
        { do: 'close', seen: '1' },
        { do: 'hands', seen: '1', 'hand-A': '9', was: '' },
      ]) {
        const sent = await own.tutor.send('POST', `/classes/${classId}/evenings/${others.evening}/step`, { _csrf: csrf, ...fields });
        expect(sent.status).toBe(404);
      }
    const made = { _csrf: csrf, id: '6f1c2d3e-0000-4000-8000-00000000000a', title: 'Mine', region: 'uk', questions: '', count: '2' };
    expect((await own.tutor.send('POST', `/classes/${others.classId}/evenings`, made)).status).toBe(404);
    expect(await app.rows('SELECT state, hands FROM evening_item WHERE evening_id = $1', [others.evening])).toEqual([
      { state: 'open', hands: [] },
    ]);
    expect(await app.rows('SELECT id FROM evening WHERE class_id = $1', [others.classId])).toEqual([{ id: others.evening }]);
  });

  it('has no way in as a candidate, and an administrator sees every class', async () => {
    for (const staff of [own.tutor, own.administrator]) {
      expect((await staff.get('/evening')).status).toBe(403);
      expect((await staff.get(`/evening/${evening}`)).status).toBe(403);
      expect((await staff.get(`/evening/${evening}/events`)).status).toBe(403);
    }
    expect((await own.administrator.get(`/classes/${own.classId}/evenings/${evening}`)).status).toBe(200);
  });
});

describe('a candidate', () => {
  it('finds the evening of the own class and no other, and no page of a tutor', async () => {
    const odo = await own.member('Odo');
    expect((await odo.get('/evening')).location).toBe(`/evening/${evening}`);
    expect((await others.member.get('/evening')).location).toBe(`/evening/${others.evening}`);
    for (const way of ['', '/1', '/events']) expect((await odo.get(`/evening/${others.evening}${way}`)).status, way).toBe(404);
    const page = await odo.get(`/evening/${evening}`);
    const csrf = page.html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    expect((await odo.send('POST', `/evening/${others.evening}/answer`, { _csrf: csrf, seen: '1', choice: 'A' })).status).toBe(404);
    for (const way of ['', ...ways.map((each) => `/${evening}${each}`)])
      expect((await odo.get(`/classes/${own.classId}/evenings${way}`)).status, way).toBe(403);
    expect(
      (await odo.send('POST', `/classes/${own.classId}/evenings/${evening}/step`, { _csrf: csrf, do: 'show', seen: '1' })).status,
    ).toBe(403);
    expect(await app.rows('SELECT FROM evening_answer')).toEqual([]);
    await chooseIn(odo, evening, 'A');
    expect(await app.rows('SELECT choice FROM evening_answer')).toEqual([{ choice: 'A' }]);
  });

  it('in two classes whose evenings run is asked which', async () => {
    const both = await own.member('Bryony');
    await app.rows(`INSERT INTO class_member (class_id, person_id) SELECT $1, id FROM person WHERE display_name = 'Bryony'`, [
      others.classId,
    ]);
    const page = await both.get('/evening');
    expect(
      page.html
        .querySelectorAll('.bank a')
        .map((link) => link.getAttribute('href'))
        .sort(),
    ).toEqual([`/evening/${evening}`, `/evening/${others.evening}`].sort());
  });

  it('without a class is told so, and a visitor is asked to come in', async () => {
    const alone = await app.candidate('Nettie');
    expect((await alone.get('/evening')).words).toContain('No class evening is on');
    expect((await app.visitor().get(`/evening/${evening}`)).status).toBe(401);
    expect((await app.visitor().get(`/classes/${own.classId}/evenings/${evening}/screen`)).status).toBe(401);
  });
});
