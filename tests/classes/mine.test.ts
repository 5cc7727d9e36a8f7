import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { testApp, type TestApp, type Visitor } from '../support/app.js';
import { joinWith, makeClass, makeJoinCode, onPeople, peopleOf, personLink } from '../support/people.js';
import { beginPaper, choose, rightLetter, withBlueprint } from '../support/papers.js';
import { staffOf } from '../support/staff.js';

/** What a candidate sees of classes: which, whose, who sees what, and the way out. The clock stands on Wednesday 25 November 2026. */

let app: TestApp;
let tutor: Visitor;
let id: number;
let odo: Visitor;
beforeAll(async () => {
  app = await testApp({ start: '2026-11-25T19:00:00Z' });
  ({ tutor } = await staffOf(app));
  await withBlueprint(app);
});
afterAll(() => app.close());
beforeEach(async () => {
  await app.rows('DELETE FROM paper');
  id = await makeClass(tutor, 'Thursday beginners', { exam: '2026-12-08', paper: 'small/six', meetsOn: '4', meetsAt: '19:30' });
  const code = await makeJoinCode(tutor, id);
  odo = await app.candidate('Odo');
  await joinWith(odo, code);
});

const leave = async (visitor: Visitor, classId = id) => visitor.submit(await visitor.get('/my-classes'), `/my-classes/${classId}/leave`);

/** Sets a paper for the class that is open now, and lets the candidate begin it. @returns the address of the sitting */
async function openPaper(visitor: Visitor): Promise<string> {
  const fields = {
    paper: 'small/six',
    title: 'Winter paper',
    region: 'uk',
    versions: '1',
    screen: 'on',
    opens: '2026-11-25T18:00',
    closes: '2026-11-25T21:00',
  };
  const set = await tutor.submit(await tutor.get('/class-papers'), '/class-papers', { class: String(id), ...fields });
  expect(set.status).toBe(303);
  const page = await visitor.get('/papers');
  const action = page.html.querySelector('form[action$="/sit"]')?.getAttribute('action') ?? '';
  return (await visitor.submit(page, action)).location ?? '';
}

/** Answers the first question rightly, hands in, and reads the mark. */
async function finish(visitor: Visitor, sitting: string): Promise<string> {
  await choose(visitor, sitting, 1, rightLetter(await visitor.get(`${sitting}/1`), 1));
  const sent = await visitor.submit(await visitor.get(`${sitting}/hand-in`), `${sitting}/hand-in`);
  return (await visitor.get(sent.location ?? '')).html.querySelector('h1')?.text ?? '';
}

describe('a candidate’s classes', () => {
  it('stand on a page of their own with tutors, days, and plainly what tutors see and do not see', async () => {
    const page = await odo.get('/my-classes');
    for (const words of [
      'Tutor: Tessa.',
      'You are in it since Wednesday 25 November 2026; Thursdays, 19:30; exam on Tuesday 8 December 2026.',
      'Every answer you give here',
      'What they cannot see Your return phrase, unless a tutor printed it for you on a slip.',
      'Other candidates see none of this.',
    ])
      expect(page.words).toContain(words);
    // The first page is not crowded: the way leads from one's own page.
    expect((await odo.get('/')).html.querySelectorAll('header a').map((link) => link.getAttribute('href'))).not.toContain('/my-classes');
    expect((await odo.get('/me')).html.querySelector('a[href="/my-classes"]')).not.toBeNull();
  });

  it('are none for whoever has not joined: a quiet line leads to the code', async () => {
    const tansy = await app.candidate('Tansy');
    const me = await tansy.get('/me');
    expect(me.html.querySelector('a[href="/join"]')?.text).toBe('Join a class');
    expect(me.html.querySelector('a[href="/my-classes"]')).toBeNull();
    expect((await tansy.get('/my-classes')).words).toContain('You are in no class.');
    // Staff have no classes to join.
    expect((await tutor.get('/me')).html.querySelector('a[href="/join"]')).toBeNull();
  });

  it('name no other candidate', async () => {
    const tansy = await app.candidate('Tansy of the marsh');
    await joinWith(
      tansy,
      (await app.rows<{ join_code: string }>('SELECT join_code FROM study_class WHERE id = $1', [id]))[0]?.join_code ?? '',
    );
    for (const path of ['/my-classes', '/me', '/', '/join']) expect((await odo.get(path)).text).not.toContain('Tansy of the marsh');
  });

  it('say that a course has ended, and stay', async () => {
    await onPeople(tutor, id, 'end');
    expect((await odo.get('/my-classes')).words).toContain('The course has ended.');
  });
});

describe('leaving', () => {
  it('takes a second step, ends what tutors see, and keeps the answers', async () => {
    const page = await odo.get('/my-classes');
    expect(page.html.querySelector(`details form[action="/my-classes/${id}/leave"]`)?.text).toContain(
      'Your tutors there no longer see you, except for papers of the class that you have handed in, also later.',
    );
    const round = await odo.round('5');
    const asked = await odo.get(round);
    const option = asked.html.querySelector('input[name=option]')?.getAttribute('value');
    await odo.submit(asked, '/study/answer', { ...(option === undefined ? { value: '1' } : { option }), certainty: 'sure' });
    const link = personLink(await tutor.get(peopleOf(id)), 'Odo');
    const left = await leave(odo);
    expect((await odo.get(left.location ?? '')).words).toContain('You have left the class.');
    expect((await tutor.get(link)).status).toBe(404);
    expect((await tutor.get(peopleOf(id))).words).not.toContain('Odo');
    expect(await app.rows(`SELECT count(*)::int AS n FROM answer WHERE person_id = (SELECT max(id) FROM person)`)).toEqual([{ n: 1 }]);
    expect((await odo.get('/progress')).status).toBe(200);
  });

  it('a second time, or a class that one is not in, or that does not exist, changes nothing and answers alike', async () => {
    const page = await odo.get('/my-classes');
    const csrf = page.html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    const other = await makeClass(tutor, 'Other');
    const sent = [];
    for (const target of [id, id, other, 999_999])
      sent.push(await odo.send('POST', `/my-classes/${target}/leave`, { _csrf: csrf, personId: '1' }));
    expect(sent.map(({ status, location }) => `${status} ${location ?? ''}`)).toEqual(
      Array.from({ length: 4 }, () => '303 /my-classes?said=left'),
    );
    expect((await odo.send('POST', '/my-classes/x/leave', { _csrf: csrf })).status).toBe(404);
  });
});

describe('an open paper', () => {
  it.each([
    [
      'of a candidate who is taken out',
      async () => {
        const link = personLink(await tutor.get(peopleOf(id)), 'Odo');
        await tutor.submit(await tutor.get(link), `${link}/remove`);
      },
    ],
    ['of a candidate who leaves', async () => void (await leave(odo))],
    [
      'of a candidate who is moved',
      async () => {
        const to = await makeClass(tutor, 'Saturday refreshers');
        const link = personLink(await tutor.get(peopleOf(id)), 'Odo');
        await tutor.submit(await tutor.get(link), `${link}/move`, { to: String(to) });
      },
    ],
    ['of a class that ends', async () => void (await onPeople(tutor, id, 'end'))],
  ])('%s is finished and handed in as any other', async (_name, goes) => {
    const sitting = await openPaper(odo);
    await beginPaper(odo, sitting);
    await choose(odo, sitting, 2, rightLetter(await odo.get(`${sitting}/2`), 2));
    await goes();
    expect((await odo.get('/')).words).toContain('Carry on with Winter paper: 10 minutes left');
    expect(await finish(odo, sitting)).toBe('2 of 6: not passed');
    // The class’s paper keeps its result.
    expect(await app.rows('SELECT "right", handed_in_at IS NOT NULL AS done FROM sitting')).toEqual([{ right: 2, done: true }]);
  });

  it('that was taken up and not begun can still be begun, and one that was not taken up is closed', async () => {
    const tansy = await app.candidate('Tansy');
    await joinWith(
      tansy,
      (await app.rows<{ join_code: string }>('SELECT join_code FROM study_class WHERE id = $1', [id]))[0]?.join_code ?? '',
    );
    const sitting = await openPaper(odo);
    const offered = (await tansy.get('/papers')).html.querySelector('form[action$="/sit"]')?.getAttribute('action') ?? '';
    const page = await tansy.get('/papers');
    await leave(odo);
    await leave(tansy);
    await beginPaper(odo, sitting);
    expect(await finish(odo, sitting)).toBe('1 of 6: not passed');
    expect((await tansy.submit(page, offered)).status).toBe(409);
  });

  it('runs out and is handed in by the server for a candidate who is gone from the class', async () => {
    const sitting = await openPaper(odo);
    await beginPaper(odo, sitting);
    await choose(odo, sitting, 1, rightLetter(await odo.get(`${sitting}/1`), 1));
    await leave(odo);
    app.clock.forward(11 * 60_000);
    expect(await app.work.closeOverdue()).toBe(1);
    expect((await odo.get(`${sitting}/result`)).html.querySelector('h1')?.text).toBe('1 of 6: not passed');
    app.clock.set('2026-11-25T19:00:00Z');
  });
});
