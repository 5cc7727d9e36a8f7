import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { testApp, type Shown, type TestApp, type Visitor } from '../support/app.js';
import { beginPaper, choose, rightLetter, withBlueprint, wrongLetter } from '../support/papers.js';
import { staffOf } from '../support/staff.js';

/** A tutor sets a paper for a class, sees who has handed in, closes it, and goes through it. The clock stands on Wednesday 25 November 2026. */

const minute = 60_000;

let app: TestApp;
let tutor: Visitor;
beforeAll(async () => {
  app = await testApp({ start: '2026-11-25T19:00:00Z' });
  ({ tutor } = await staffOf(app));
  await withBlueprint(app);
  await app.rows(`WITH made AS (INSERT INTO study_class (name) VALUES ('Thursday beginners'), ('Somebody else’s') RETURNING id, name)
    INSERT INTO class_tutor (class_id, person_id) SELECT made.id, person.id FROM made, person WHERE made.name = 'Thursday beginners' AND person.role = 'tutor'`);
});
afterAll(() => app.close());
beforeEach(async () => {
  app.clock.set('2026-11-25T19:00:00Z');
  await app.rows('DELETE FROM paper');
  await app.rows('DELETE FROM class_member');
});

async function member(name: string, className = 'Thursday beginners'): Promise<Visitor> {
  const visitor = await app.candidate(name);
  await app.rows(
    `INSERT INTO class_member (class_id, person_id) SELECT c.id, (SELECT max(id) FROM person) FROM study_class c WHERE c.name = $1`,
    [className],
  );
  return visitor;
}

const fields = {
  paper: 'small/six',
  title: 'Winter paper',
  region: 'uk',
  versions: '3',
  screen: 'on',
  opens: '2026-11-25T19:30',
  closes: '2026-11-25T21:00',
};

async function set(more: Record<string, string> = {}): Promise<Shown> {
  const page = await tutor.get('/class-papers');
  const value = page.html.querySelector('select[name=class] option')?.getAttribute('value') ?? '';
  return await tutor.submit(page, '/class-papers', { class: value, ...fields, ...more });
}

/** Takes up the open paper, and begins. @returns the address of the sitting */
async function takeUp(visitor: Visitor): Promise<string> {
  const page = await visitor.get('/papers');
  const action = page.html.querySelector('form[action$="/sit"]')?.getAttribute('action') ?? '';
  const sitting = (await visitor.submit(page, action)).location ?? '';
  await beginPaper(visitor, sitting);
  return sitting;
}

async function handIn(visitor: Visitor, sitting: string): Promise<Shown> {
  const sent = await visitor.submit(await visitor.get(`${sitting}/hand-in`), `${sitting}/hand-in`);
  return await visitor.get(sent.location ?? '');
}

const rollOf = (page: Shown): string[][] =>
  page.html.querySelectorAll('#roll tbody tr').map((row) =>
    row
      .querySelectorAll('th, td')
      .slice(0, 4)
      .map((cell) => cell.text.trim()),
  );

describe('a class paper', () => {
  it('can be taken up in its window and not before, each candidate with a version of their own', async () => {
    const [odo, tansy, wilf] = [await member('Odo'), await member('Tansy'), await member('Wilf', 'Somebody else’s')];
    expect((await set()).status).toBe(303);
    expect((await odo.get('/papers')).words).not.toContain('Winter paper');
    app.clock.forward(31 * minute);
    expect((await odo.get('/papers')).words).toContain('Take up Winter paper');
    expect((await odo.get('/')).words).toContain('Winter paper is open to you: Thursday beginners has set it.');
    expect((await wilf.get('/papers')).words).not.toContain('Winter paper');
    const sittings = [await takeUp(odo), await takeUp(tansy)];
    expect((await odo.get('/')).words).toContain('Carry on with Winter paper: 10 minutes left');
    const rows = await app.rows<{ version: number }>('SELECT version FROM sitting ORDER BY version');
    expect(rows.map(({ version }) => version)).toEqual([1, 2]);
    // The same questions in another order.
    const stems = await Promise.all([odo.get(`${sittings[0]}/all`), tansy.get(`${sittings[1]}/all`)]);
    const codes = await app.rows<{ version: number; codes: number[] }>(
      'SELECT version, array_agg(question_id ORDER BY question_id) AS codes FROM paper_item GROUP BY version ORDER BY version',
    );
    expect(stems.map(({ status }) => status)).toEqual([200, 200]);
    expect(codes[1]?.codes).toEqual(codes[0]?.codes);
  });

  it('ends for everybody when its window closes, and counts what was saved', async () => {
    const odo = await member('Odo');
    await set({ versions: '1' });
    app.clock.set('2026-11-25T20:55:00Z');
    const sitting = await takeUp(odo);
    await choose(odo, sitting, 1, rightLetter(await odo.get(`${sitting}/1`), 1));
    app.clock.set('2026-11-25T21:00:00.001Z');
    expect((await odo.get(`${sitting}/2`)).location).toBe(sitting);
    expect((await odo.get(`${sitting}/result`)).html.querySelector('h1')?.text).toBe('1 of 6: not passed');
  });

  it('tells its tutor who has handed in, how far the others are, and ends when the tutor closes it', async () => {
    const [odo, tansy] = [await member('Odo'), await member('Tansy')];
    await member('Vane');
    const address = (await set({ versions: '1', opens: '2026-11-25T18:00' })).location ?? '';
    const [first, second] = [await takeUp(odo), await takeUp(tansy)];
    for (const place of [1, 2, 3, 4, 5, 6]) await choose(odo, first, place, rightLetter(await odo.get(`${first}/${place}`), place));
    await handIn(odo, first);
    await choose(tansy, second, 1, wrongLetter(await tansy.get(`${second}/1`), 1));
    const page = await tutor.get(address);
    expect(page.words).toContain('1 of 3 handed in, 1 passed.');
    expect(rollOf(page)).toEqual([
      ['Odo', '1', 'handed in', '6, passed'],
      ['Tansy', '1', '1 of 6 answered', ''],
      ['Vane', '', 'not begun', ''],
    ]);
    const closed = await tutor.get((await tutor.submit(page, `${address}/close`)).location ?? '');
    expect(rollOf(closed)[1]).toEqual(['Tansy', '1', 'handed in', '0, not passed']);
    expect((await tansy.get(`${second}/1`)).location).toBe(second);
    expect(closed.html.querySelector(`form[action="${address}/close"]`)).toBeNull();
    // Odo had all six right and Tansy the first wrong and the rest blank: one of two each, in the order of the paper.
    const rights = closed.html.querySelectorAll('section:last-of-type tbody tr td').map(({ text }) => text);
    expect(rights).toEqual(['1 of 2', '1 of 2', '1 of 2', '1 of 2', '1 of 2', '1 of 2']);
  });

  it('is handed in by the server’s own timer when nobody looks', async () => {
    const odo = await member('Odo');
    await set({ versions: '1', opens: '2026-11-25T18:00' });
    const sitting = await takeUp(odo);
    await choose(odo, sitting, 1, rightLetter(await odo.get(`${sitting}/1`), 1));
    expect(await app.work.closeOverdue()).toBe(0);
    app.clock.forward(11 * minute);
    // Two servers at the same moment.
    await Promise.all([app.work.closeOverdue(), (await app.another()).work.closeOverdue()]);
    expect(await app.rows('SELECT "right", passed FROM sitting')).toEqual([{ right: 1, passed: false }]);
    expect(await app.rows('SELECT count(*)::int AS count FROM answer WHERE person_id = (SELECT max(id) FROM person)')).toEqual([
      { count: 1 },
    ]);
  });

  it('gives a candidate the extra time that the tutor has set, before the start and in the middle', async () => {
    const [odo, tansy] = [await member('Odo'), await member('Tansy')];
    const address = (await set({ versions: '1', opens: '2026-11-25T18:00' })).location ?? '';
    const give = async (name: string, extra: string): Promise<void> => {
      const page = await tutor.get(address);
      const row = page.html.querySelectorAll('tbody tr').find(({ text }) => text.includes(name));
      const id = row?.querySelector('input[name=member]')?.getAttribute('value') ?? '';
      const _csrf = row?.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
      expect((await tutor.send('POST', `${address}/extra-time`, { _csrf, member: id, extra })).status).toBe(303);
    };
    await give('Odo', '50');
    await takeUp(odo);
    await takeUp(tansy);
    await give('Tansy', '100');
    const rows = await app.rows<{ seconds: number }>(
      'SELECT extract(epoch FROM deadline_at - started_at)::int AS seconds FROM sitting s JOIN person p ON p.id = s.person_id ORDER BY display_name',
    );
    expect(rows.map(({ seconds }) => seconds)).toEqual([15 * 60, 20 * 60]);
  });

  it('is gone through with the counts by option, which stay hidden until they are wanted', async () => {
    const people = [];
    for (const name of ['Odo', 'Tansy', 'Vane', 'Wren', 'Zelda']) people.push(await member(name));
    const address = (await set({ opens: '2026-11-25T18:00' })).location ?? '';
    const places: number[] = [];
    for (const [index, visitor] of people.entries()) {
      const sitting = await takeUp(visitor);
      const all = await visitor.get(`${sitting}/all`);
      // The question that is first in version 1, wherever it stands here.
      const stem = index === 0 ? (all.html.querySelector('#q1 .stem')?.text ?? '').replace(/^Question\s+1\. /, '') : '';
      if (index === 0) stems.push(stem);
      const place = [1, 2, 3, 4, 5, 6].find((each) => all.html.querySelector(`#q${each} .stem`)?.text.includes(stems[0] ?? '?')) ?? 0;
      places.push(place);
      await choose(visitor, sitting, place, index < 2 ? rightLetter(all, place) : wrongLetter(all, place));
      await handIn(visitor, sitting);
      if (index < 4) {
        const few = await tutor.get(`${address}/review/1?show=yes`);
        expect(few.words).toContain(`${index + 1} paper${index === 0 ? '' : 's'} handed in: too few to count here`);
        expect(few.html.querySelectorAll('.side td')).toEqual([]);
      }
    }
    expect(places[0]).toBe(1);
    const hidden = await tutor.get(`${address}/review/1`);
    expect(hidden.words).not.toContain('What was chosen');
    const shown = await tutor.get(`${address}/review/1?show=yes`);
    const key = shown.html.querySelectorAll('.opt').findIndex((option) => option.classList.contains('key'));
    const counts = shown.html.querySelectorAll('.side tbody tr').map((row) => row.querySelector('td')?.text ?? '');
    expect(counts[key]).toBe('2 of 5');
    expect(counts.filter((text) => text.endsWith(' of 5')).reduce((all, text) => all + Number.parseInt(text, 10), 0)).toBe(5);
    expect((await tutor.get(`${address}/review/7`)).status).toBe(404);
  });
  const stems: string[] = [];

  it('is not there for other tutors’ eyes, nor for candidates', async () => {
    const odo = await member('Odo');
    const address = (await set({ opens: '2026-11-25T18:00' })).location ?? '';
    await app.rows(`UPDATE paper SET class_id = (SELECT id FROM study_class WHERE name = 'Somebody else’s')`);
    for (const way of ['', '/review/1', '/print', '/enter', '/results.csv']) {
      expect((await tutor.get(`${address}${way}`)).status, way).toBe(404);
      expect((await odo.get(`${address}${way}`)).status, way).toBe(403);
    }
  });

  it.each([
    ['a name', { title: ' ' }, 'Give it a name'],
    ['versions', { versions: '61' }, 'From 1 to 60 versions can be made.'],
    ['a window', { closes: '2026-11-25T19:00' }, 'It would close before it opens.'],
    ['enough time', { closes: '2026-11-25T19:35' }, 'It would close after 5 minutes, and the paper takes 10.'],
    ['a time', { opens: 'tonight' }, 'This is no day and time.'],
  ])('is not set without %s that fits, and nothing typed is lost', async (_what, wrong, words) => {
    const page = await set({ ...(wrong as Record<string, string>), region: 'na' });
    expect(page.status).toBe(422);
    expect(page.words).toContain(words);
    expect(page.html.querySelector('#title')?.getAttribute('value')).toBe((wrong as { title?: string }).title ?? 'Winter paper');
    expect(page.html.querySelector('select[name=region] option[selected]')?.getAttribute('value')).toBe('na');
    expect(await app.rows('SELECT FROM paper')).toEqual([]);
  });
});

describe('a key that is corrected later', () => {
  it('changes the mark, and the page says so and what it was', async () => {
    const odo = await member('Odo');
    const address = (await set({ versions: '1', opens: '2026-11-25T18:00' })).location ?? '';
    const sitting = await takeUp(odo);
    await choose(odo, sitting, 1, wrongLetter(await odo.get(`${sitting}/1`), 1));
    expect((await handIn(odo, sitting)).html.querySelector('h1')?.text).toBe('0 of 6: not passed');
    // The pack's next revision gives the key to the option that was chosen.
    const [item] = await app.rows<{ question_id: number; given: string }>(
      'SELECT i.question_id, a.given FROM paper_item i JOIN answer a ON a.question_id = i.question_id WHERE i.position = 1 AND a.person_id = (SELECT max(id) FROM person)',
    );
    await app.rows(
      `INSERT INTO question_revision (question_id, revision, body, content_hash) SELECT question_id, 2,
         jsonb_set(body #- '{options,0,key}' #- ARRAY['options', $2::text, 'why'], ARRAY['options', $2::text, 'key'], 'true') || '{"revision": 2}'
           || jsonb_build_object('options', (SELECT jsonb_agg(CASE WHEN n - 1 = $2::int THEN (o - 'why') || '{"key": true}' WHEN o ? 'key' THEN (o - 'key') || '{"why": "Not so."}' ELSE o END ORDER BY n)
              FROM jsonb_array_elements(body->'options') WITH ORDINALITY AS t(o, n))), 'corrected'
       FROM question_revision WHERE question_id = $1 AND revision = 1`,
      [item?.question_id, item?.given],
    );
    await app.rows('UPDATE question SET current_revision = 2 WHERE id = $1', [item?.question_id]);
    app.clock.forward(2 * minute);
    const result = await odo.get(`${sitting}/result`);
    expect(result.html.querySelector('h1')?.text).toBe('1 of 6: not passed');
    expect(result.words).toContain('Marked again on Wed 25 Nov: the key of question 1 was corrected. Before that you had 0.');
    expect((await odo.get(`${sitting}/review/1`)).words).toContain('The key was corrected after the paper was made.');
    const page = await tutor.get(address);
    expect(page.words).toContain('1 paper was marked again');
    expect(rollOf(page)[0]?.[3]).toBe('1 (was 0), not passed');
    await app.rows('UPDATE question SET current_revision = 1 WHERE id = $1', [item?.question_id]);
    app.clock.forward(2 * minute);
  });
});

describe('a make-up of one’s own', () => {
  const typed = { title: 'Two topics', minutes: '5', passMark: '2', 'share-AA': '2', 'share-BB': '1' };
  const save = async (more: Record<string, string> = {}): Promise<Shown> =>
    await tutor.submit(await tutor.get('/class-papers/blueprints'), '/class-papers/blueprints', { ...typed, ...more });

  it('is offered to candidates and for classes, until it is offered no more', async () => {
    expect((await save()).status).toBe(303);
    const odo = await app.candidate('Odo');
    expect((await odo.get('/papers')).words).toContain('Two topics: 5 min, 2 of 3 to pass');
    const name = (await tutor.get('/class-papers')).html
      .querySelectorAll('select[name=paper] option')
      .map((option) => option.getAttribute('value'));
    expect(name.some((value) => value?.startsWith('small/own-'))).toBe(true);
    await member('Tansy');
    expect((await set({ paper: name.at(-1) ?? '' })).status).toBe(303);
    await tutor.submit(await tutor.get('/class-papers/blueprints'), '/class-papers/blueprints/retire');
    expect((await odo.get('/papers')).words).not.toContain('Two topics');
  });

  it.each([
    ['a topic that lacks questions', { 'share-AA': '9' }, 'AA Topic AA lacks 7: 9 asked, 2 there'],
    ['more to pass than it asks', { passMark: '4' }, 'That is more than the 3 questions of the paper.'],
    ['no questions', { 'share-AA': '', 'share-BB': '0' }, 'this would have 0'],
    ['words for a number', { 'share-AA': 'two' }, '“two” for AA is no number of questions.'],
    ['no minutes', { minutes: '0' }, 'Write the minutes as a number from 1 to 600.'],
  ])('is not kept with %s, and nothing typed is lost', async (_what, wrong, words) => {
    const page = await save(wrong as Record<string, string>);
    expect(page.status).toBe(422);
    expect(page.words).toContain(words);
    expect(page.html.querySelector('#title')?.getAttribute('value')).toBe('Two topics');
    expect(page.html.querySelector('#share-BB')?.getAttribute('value')).toBe((wrong as Record<string, string>)['share-BB'] ?? '1');
  });
});
