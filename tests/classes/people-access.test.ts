import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { testApp, type TestApp, type Visitor } from '../support/app.js';
import { addNames, anotherTutor, joinWith, makeClass, makeJoinCode, masked, onPeople, peopleOf } from '../support/people.js';
import { staffOf } from '../support/staff.js';

/** Who may do what about the people of a class: two classes of two tutors, an administrator, candidates in and out, visitors. */

let app: TestApp;
let mine: number;
let foreign: number;
let member: number;
let stranger: number;
let who: Record<'administrator' | 'tutor' | 'other' | 'candidate in' | 'candidate not in' | 'visitor', Visitor>;
beforeAll(async () => {
  app = await testApp({ start: '2026-11-25T19:00:00Z' });
  const { administrator, tutor } = await staffOf(app);
  const other = await anotherTutor(app, administrator, 'Tobias', '10.0.0.7');
  [mine, foreign] = [await makeClass(tutor, 'Thursday beginners'), await makeClass(other, 'Foreign class')];
  await addNames(tutor, mine, 'Member');
  await addNames(other, foreign, 'Stranger');
  const [odo, tansy] = [await app.candidate('Odo'), await app.candidate('Tansy')];
  await joinWith(odo, await makeJoinCode(tutor, mine));
  await makeJoinCode(other, foreign);
  who = { administrator, tutor, other, 'candidate in': odo, 'candidate not in': tansy, visitor: app.visitor('10.0.0.9') };
  [member, stranger] = [await idOf('Member'), await idOf('Stranger')];
});
afterAll(() => app.close());

const idOf = async (name: string): Promise<number> =>
  (await app.rows<{ id: number }>('SELECT id FROM person WHERE display_name = $1', [name]))[0]?.id ?? 0;

interface Route {
  method: 'GET' | 'POST';
  path: (classId: number, personId: number) => string;
  body?: Record<string, string>;
}

const classBody = { name: 'Taken', exam: '', paper: '', meetsOn: '', meetsAt: '' };

/** Every route about the people of one class. */
const routes: Route[] = [
  { method: 'GET', path: (id) => peopleOf(id) },
  { method: 'GET', path: (id) => `${peopleOf(id)}/slips` },
  { method: 'GET', path: (id) => `${peopleOf(id)}/join-slips` },
  { method: 'GET', path: (id, person) => `${peopleOf(id)}/${person}` },
  { method: 'POST', path: (id) => `${peopleOf(id)}/class`, body: classBody },
  { method: 'POST', path: (id) => `${peopleOf(id)}/class`, body: { ...classBody, name: '' } },
  { method: 'POST', path: (id) => `${peopleOf(id)}/end`, body: { what: 'end' } },
  { method: 'POST', path: (id) => `${peopleOf(id)}/end`, body: { what: 'again' } },
  { method: 'POST', path: (id) => `${peopleOf(id)}/tutors`, body: { tutor: '2' } },
  { method: 'POST', path: (id) => `${peopleOf(id)}/tutors/remove`, body: { tutor: '3' } },
  { method: 'POST', path: (id) => `${peopleOf(id)}/code`, body: { what: 'new', days: '7' } },
  { method: 'POST', path: (id) => `${peopleOf(id)}/code`, body: { what: 'keep', days: '7' } },
  { method: 'POST', path: (id) => `${peopleOf(id)}/code`, body: { what: 'close', days: '7' } },
  {
    method: 'POST',
    path: (id) => `${peopleOf(id)}/add`,
    body: { names: 'Intruder', region: 'uk', token: '0b9f1c1e-6f0a-4a53-9d6f-0d6f2a3f1b77' },
  },
  { method: 'POST', path: (id) => `${peopleOf(id)}/add`, body: { names: '', region: 'uk', token: '0b9f1c1e-6f0a-4a53-9d6f-0d6f2a3f1b77' } },
  { method: 'POST', path: (id, person) => `${peopleOf(id)}/${person}/slip`, body: { before: '' } },
  { method: 'POST', path: (id, person) => `${peopleOf(id)}/${person}/move`, body: { to: '1' } },
  { method: 'POST', path: (id, person) => `${peopleOf(id)}/${person}/remove`, body: {} },
];

async function ask(visitor: Visitor, { method, body }: Route, path: string) {
  if (method === 'GET') return await visitor.get(path);
  const csrf = (await visitor.get('/me')).html.querySelector('input[name=_csrf]')?.getAttribute('value');
  const token = csrf ?? (await visitor.get('/join')).html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
  return await visitor.send('POST', path, { _csrf: token, ...body });
}

/** All that these routes could change. */
const everything = async (): Promise<string> =>
  JSON.stringify([
    await app.rows('SELECT * FROM study_class ORDER BY id'),
    await app.rows('SELECT * FROM class_tutor ORDER BY class_id, person_id'),
    await app.rows('SELECT * FROM class_member ORDER BY class_id, person_id'),
    await app.rows('SELECT id, display_name, role, phrase_hash, slip_by, slip_at FROM person ORDER BY id'),
  ]);

describe('another tutor’s class', () => {
  it.each(routes.map((route) => [`${route.method} ${route.path(0, 0).replace('/classes/0', '…')}`, route] as const))(
    'answers %s byte for byte as a class that does not exist, and nothing changes',
    async (_name, route) => {
      const before = await everything();
      const text = async (path: string): Promise<string> => {
        const page = await ask(who.tutor, route, path);
        const { date: _, 'set-cookie': __, ...headers } = page.headers;
        return `${page.status} ${JSON.stringify(headers)} ${masked(page)}`;
      };
      const answers = [
        await text(route.path(foreign, stranger)),
        await text(route.path(999_999, stranger)),
        await text(route.path(999_999, 999_999)),
      ];
      expect(answers[0]?.slice(0, 3)).toBe('404');
      expect(new Set(answers).size).toBe(1);
      expect(await everything()).toBe(before);
    },
  );

  it('has candidates who are nobody in one’s own class: theirs and unknown ids answer alike, and nothing changes', async () => {
    const before = await everything();
    for (const route of routes.filter(({ path }) => path(0, 1).includes('/1'))) {
      const answers = [];
      for (const person of [stranger, 999_999]) {
        const page = await ask(
          who.tutor,
          { ...route, ...(route.body === undefined ? {} : { body: { ...route.body, to: String(mine) } }) },
          route.path(mine, person),
        );
        answers.push(`${page.status} ${page.location ?? ''} ${masked(page)}`);
      }
      expect(answers[0]).toBe(answers[1]);
    }
    expect(await everything()).toBe(before);
  });

  it('takes nobody in by a move', async () => {
    const before = await everything();
    const page = await who.tutor.get(`${peopleOf(mine)}/${member}`);
    const moves = [foreign, 999_999].map(async (to) =>
      masked(await ask(who.tutor, { method: 'POST', path: String, body: { to: String(to) } }, `${peopleOf(mine)}/${member}/move`)),
    );
    const [first, second] = await Promise.all(moves);
    expect(first).toBe(second);
    expect(first).toContain('There is no such page');
    expect(page.status).toBe(200);
    expect(await everything()).toBe(before);
  });
});

describe('the table of people and routes', () => {
  it('opens a class to its tutor and to administrators, and to nobody else', async () => {
    const seen: Record<string, (number | string)[]> = {};
    for (const [name, visitor] of Object.entries(who)) {
      seen[name] = [];
      for (const route of routes.filter(({ method }) => method === 'GET'))
        seen[name].push((await ask(visitor, route, route.path(mine, member))).status);
    }
    const all = (status: number) => [status, status, status, status];
    expect(seen).toEqual({
      administrator: all(200),
      tutor: all(200),
      other: all(404),
      'candidate in': all(403),
      'candidate not in': all(403),
      visitor: all(401),
    });
  });

  it('lets nobody else change it', async () => {
    const before = await everything();
    for (const name of ['other', 'candidate in', 'candidate not in', 'visitor'] as const)
      for (const route of routes.filter(({ method }) => method === 'POST')) {
        const { status } = await ask(who[name], route, route.path(mine, member));
        expect([401, 403, 404], `${name} ${route.path(mine, member)}`).toContain(status);
      }
    for (const name of ['candidate in', 'candidate not in', 'visitor'] as const) {
      expect([401, 403]).toContain((await ask(who[name], { method: 'POST', path: String, body: classBody }, '/classes')).status);
      expect([401, 403]).toContain((await who[name].get('/classes/new')).status);
      expect([401, 403]).toContain((await who[name].get('/classes')).status);
    }
    expect(await everything()).toBe(before);
  });

  it('gives one’s own classes to candidates alone', async () => {
    for (const [name, visitor] of Object.entries(who)) {
      const expected = name === 'visitor' ? 401 : name.startsWith('candidate') ? 200 : 403;
      expect((await visitor.get('/my-classes')).status, name).toBe(expected);
      const left = (await ask(visitor, { method: 'POST', path: String, body: {} }, `/my-classes/${foreign}/leave`)).status;
      expect(left, name).toBe(name === 'visitor' ? 401 : name.startsWith('candidate') ? 303 : 403);
    }
  });

  it('opens the page that asks for a code to everybody', async () => {
    for (const visitor of Object.values(who)) expect((await visitor.get('/join')).status).toBe(200);
  });
});

describe('fields that a form does not have', () => {
  const more = {
    classId: '1',
    class: '1',
    personId: '1',
    person: '1',
    role: 'administrator',
    extra_time: '100',
    extraTime: '100',
    joinCode: 'AAAAAAAA',
    ended_at: '2026-01-01',
    tutors: '3',
    slip_by: '3',
    id: '1',
  };

  it('change nothing when they are slipped into a tutor’s forms', async () => {
    const id = await makeClass(who.tutor, 'Plain', more);
    await onPeople(who.tutor, id, 'class', { ...classBody, ...more, name: 'Plain' });
    await onPeople(who.tutor, id, 'add', { ...more, names: 'Nettie' });
    const [made] = await app.rows('SELECT name, exam_on, paper, join_code, ended_at FROM study_class WHERE id = $1', [id]);
    expect(made).toEqual({ name: 'Plain', exam_on: null, paper: null, join_code: null, ended_at: null });
    expect(
      await app.rows('SELECT p.display_name FROM class_tutor t JOIN person p ON p.id = t.person_id WHERE class_id = $1', [id]),
    ).toEqual([{ display_name: 'Tessa' }]);
    expect(
      await app.rows(
        'SELECT p.display_name, p.role, p.slip_by, m.extra_time FROM class_member m JOIN person p ON p.id = m.person_id WHERE class_id = $1',
        [id],
      ),
    ).toEqual([{ display_name: 'Nettie', role: 'candidate', slip_by: null, extra_time: 0 }]);
    const link = `${peopleOf(id)}/${await idOf('Nettie')}`;
    const rest = async () =>
      JSON.stringify([
        await app.rows(`SELECT * FROM person WHERE display_name <> 'Nettie' ORDER BY id`),
        await app.rows('SELECT * FROM class_member ORDER BY class_id, person_id'),
      ]);
    const before = await rest();
    await who.tutor.submit(await who.tutor.get(link), `${link}/slip`, more);
    expect(await rest()).toBe(before);
    expect(
      await app.rows(
        `SELECT role, (SELECT display_name FROM person t WHERE t.id = p.slip_by) AS by FROM person p WHERE display_name = 'Nettie'`,
      ),
    ).toEqual([{ role: 'candidate', by: 'Tessa' }]);
  });

  it('that are missing or of another kind are refused, and change nothing', async () => {
    const before = await everything();
    for (const [path, body] of [
      ['class', { name: 'No exam field' }],
      ['class', { ...classBody, meetsOn: '7' }],
      ['end', {}],
      ['end', { what: 'delete' }],
      ['tutors', {}],
      ['tutors', { tutor: '1; DROP TABLE person' }],
      ['tutors/remove', { tutor: '-1' }],
      ['add', { names: 'Odo', region: 'moon', token: '0b9f1c1e-6f0a-4a53-9d6f-0d6f2a3f1b77' }],
      ['add', { names: 'Odo', region: 'uk', token: 'again' }],
      [`${member}/slip`, {}],
      [`${member}/slip`, { before: 'yesterday' }],
      [`${member}/move`, { to: '' }],
    ] as const) {
      const { status } = await ask(who.tutor, { method: 'POST', path: String, body }, `${peopleOf(mine)}/${path}`);
      expect(status, `${path} ${JSON.stringify(body)}`).toBe(400);
    }
    expect(await everything()).toBe(before);
  });

  it.each(['0', '01', '-1', '1.5', '1e3', 'x', '9999999999', '%00', '1%20OR%201'])(
    'and an address with the id %s lead nowhere',
    async (id) => {
      for (const path of [`/classes/${id}/people`, `${peopleOf(mine)}/${id}`, `/classes/${id}/people/slips`])
        expect([400, 404]).toContain((await who.tutor.get(path)).status);
    },
  );
});
