import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { testApp, type TestApp, type Visitor } from '../support/app.js';
import {
  addNames,
  anotherTutor,
  codeOn,
  joinWith,
  makeClass,
  makeJoinCode,
  membersOn,
  onPeople,
  peopleOf,
  personLink,
} from '../support/people.js';
import { withBlueprint } from '../support/papers.js';
import { staffOf } from '../support/staff.js';

/** A tutor makes a class, keeps it, and looks after who is in it. The clock stands on Wednesday 25 November 2026, 19:00 in London. */

let app: TestApp;
let administrator: Visitor;
let tutor: Visitor;
let other: Visitor;
beforeAll(async () => {
  app = await testApp({ start: '2026-11-25T19:00:00Z' });
  ({ administrator, tutor } = await staffOf(app));
  await withBlueprint(app);
  other = await anotherTutor(app, administrator, 'Tobias', '10.0.0.7');
});
afterAll(() => app.close());

const rowOf = async (classId: number) =>
  (
    await app.rows<Record<string, unknown>>(
      'SELECT name, exam_on, paper, meets_on, meets_at, time_zone, ended_at IS NOT NULL AS ended FROM study_class WHERE id = $1',
      [classId],
    )
  )[0];

const whole = { exam: '2026-12-08', paper: 'small/six', meetsOn: '4', meetsAt: '7:30 pm' };
const staffId = async (name: string): Promise<string> =>
  String((await app.rows<{ id: number }>('SELECT id FROM person WHERE display_name = $1', [name]))[0]?.id);

describe('a class', () => {
  it('is made with all that is known of it, and its maker is its tutor', async () => {
    const id = await makeClass(tutor, '  Thursday   beginners ', whole);
    expect(await rowOf(id)).toEqual({
      name: 'Thursday beginners',
      exam_on: '2026-12-08',
      paper: 'small/six',
      meets_on: 4,
      meets_at: '19:30',
      time_zone: 'Europe/London',
      ended: false,
    });
    const page = await tutor.get(peopleOf(id));
    expect(page.html.querySelector('.lead')?.text).toBe('0 candidates; 1 tutor; Thursdays, 19:30; exam on Tuesday 8 December 2026.');
    expect(page.html.querySelectorAll('.people li').map(({ text }) => text.trim().replace(/\s+/g, ' '))).toEqual(['Tessa (Tutor, you)']);
  });

  it('can be made with a name alone, where no pack has a paper, and without a pack', async () => {
    await app.rows(`UPDATE pack SET blueprints = '[]'`);
    app.clock.forward(120_000);
    const page = await tutor.get('/classes/new');
    expect(page.words).toContain('No pack on this server has a paper yet.');
    const id = await makeClass(tutor, 'Without a paper');
    expect(await rowOf(id)).toMatchObject({ paper: null, exam_on: null, meets_on: null, meets_at: null });
    await withBlueprint(app);
    app.clock.forward(120_000);
    app.clock.set('2026-11-25T19:00:00Z');
  });

  it('is made once when its form is sent twice, one after the other and at the same moment', async () => {
    const page = await tutor.get('/classes/new');
    const fields = { exam: '', paper: '', meetsOn: '', meetsAt: '', name: 'Pressed twice' };
    const sent = await Promise.all([tutor.submit(page, '/classes', fields), tutor.submit(page, '/classes', fields)]);
    const later = await tutor.submit(page, '/classes', fields);
    expect(new Set([...sent, later].map(({ location }) => location)).size).toBe(1);
    expect(await app.rows(`SELECT count(*)::int AS n FROM study_class WHERE name = 'Pressed twice'`)).toEqual([{ n: 1 }]);
    // The token of somebody else's form makes nothing and shows nothing.
    const token = page.html.querySelector('input[name=startToken]')?.getAttribute('value') ?? '';
    const stolen = await other.submit(await other.get('/classes/new'), '/classes', { ...fields, startToken: token });
    expect([stolen.status, stolen.location]).toEqual([422, undefined]);
  });

  it.each([
    [{ name: ' ' }, 'Give the class a name', 'name'],
    [{ name: 'x'.repeat(61) }, 'Sixty letters are enough.', 'name'],
    [{ name: 'Odd\u202eclass' }, 'holds a sign that cannot be shown', 'name'],
    [{ exam: 'soon' }, 'This is no date.', 'exam'],
    [{ exam: '2026-11-24' }, 'That day has passed.', 'exam'],
    [{ exam: '2028-11-26' }, 'more than two years ahead', 'exam'],
    [{ paper: 'small/none' }, 'That paper is no longer in the bank.', 'paper'],
    [{ meetsOn: '4', meetsAt: '' }, 'Write the time too', 'meetsAt'],
    [{ meetsOn: '', meetsAt: '19:30' }, 'Choose the day too', 'meetsOn'],
    [{ meetsAt: 'evening' }, 'This is no time of day.', 'meetsAt'],
  ])('with %j is refused kindly, and what was typed stays', async (fields, why, target) => {
    const typed = { name: 'Fine name', ...whole, ...fields };
    const back = await tutor.submit(await tutor.get('/classes/new'), '/classes', typed);
    expect(back.status).toBe(422);
    expect(back.html.querySelector('.plate.no a')?.text).toContain(why);
    expect(back.html.querySelector('.plate.no a')?.getAttribute('href')).toBe(`#${target}`);
    expect(back.html.querySelector('#name')?.getAttribute('value')).toBe(typed.name);
    expect(back.html.querySelector('#exam')?.getAttribute('value')).toBe(typed.exam);
    expect(back.html.querySelector('#meetsAt')?.getAttribute('value')).toBe(typed.meetsAt);
    expect(back.html.querySelector('#meetsOn option[selected]')?.getAttribute('value')).toBe(typed.meetsOn);
  });

  it.each([
    ['2026-11-25', '2026-11-25'],
    ['2028-11-25', '2028-11-25'],
    ['24 Dec 2026', '2026-12-24'],
  ])('may have its exam on %s: today, or two years from now', async (typed, kept) =>
    expect(await rowOf(await makeClass(tutor, 'Exam', { exam: typed }))).toMatchObject({ exam_on: kept }),
  );

  it('is changed; an exam that has passed and a paper that is gone may stay, and typed faults come back', async () => {
    const id = await makeClass(tutor, 'To change', whole);
    await app.rows(`UPDATE study_class SET paper = 'gone/paper', exam_on = '2026-11-20' WHERE id = $1`, [id]);
    const page = await tutor.get(peopleOf(id));
    expect(page.html.querySelector('#paper option[selected]')?.text).toBe('gone/paper, which is no longer in the bank');
    const saved = await onPeople(tutor, id, 'class', {
      ...whole,
      exam: '2026-11-20',
      paper: 'gone/paper',
      name: 'Changed',
      meetsAt: '20:00',
    });
    expect(saved.words).toContain('Saved.');
    expect(await rowOf(id)).toMatchObject({ name: 'Changed', exam_on: '2026-11-20', paper: 'gone/paper', meets_at: '20:00' });
    const back = await onPeople(tutor, id, 'class', { ...whole, name: 'Changed', exam: '2026-11-21' });
    expect([back.status, back.html.querySelector('.plate.no a')?.getAttribute('href')]).toEqual([422, '#exam']);
    expect(back.html.querySelector('details[open] #exam')?.getAttribute('value')).toBe('2026-11-21');
  });

  it('keeps its clock when another tutor of another time zone changes its name only', async () => {
    const id = await makeClass(tutor, 'Clock', whole);
    await onPeople(tutor, id, 'tutors', { tutor: await staffId('Tobias') });
    await app.rows(`UPDATE person SET time_zone = 'Asia/Kolkata' WHERE display_name = 'Tobias'`);
    await onPeople(other, id, 'class', { ...whole, name: 'Clock two' });
    expect(await rowOf(id)).toMatchObject({ name: 'Clock two', time_zone: 'Europe/London', meets_at: '19:30' });
    await onPeople(other, id, 'class', { ...whole, name: 'Clock two', meetsAt: '18:00' });
    expect(await rowOf(id)).toMatchObject({ time_zone: 'Asia/Kolkata', meets_at: '18:00' });
    await app.rows(`UPDATE person SET time_zone = 'Europe/London' WHERE display_name = 'Tobias'`);
  });

  it('ends and is taken up again; its code is dead from the end on, and pressing twice changes nothing', async () => {
    const id = await makeClass(tutor, 'To end');
    const code = await makeJoinCode(tutor, id);
    const page = await tutor.get(peopleOf(id));
    for (const _ of [1, 2]) await tutor.submit(page, `${peopleOf(id)}/end`);
    expect(await rowOf(id)).toMatchObject({ ended: true });
    expect((await app.visitor('10.9.0.1').get(`/join/${code}`)).status).toBe(404);
    const ended = await tutor.get(peopleOf(id));
    expect([codeOn(ended), ended.html.querySelector('#code')]).toEqual(['', null]);
    for (const _ of [1, 2]) await tutor.submit(ended, `${peopleOf(id)}/end`);
    expect(await rowOf(id)).toMatchObject({ ended: false });
    expect((await app.visitor('10.9.0.1').get(`/join/${code}`)).status).toBe(404);
    expect((await tutor.get(peopleOf(id))).words).toContain('Make a joining code');
  });
});

describe('tutors of a class', () => {
  it('are added from the list of staff, see everything, and lose all at once when they are removed', async () => {
    const id = await makeClass(tutor, 'Two tutors');
    expect((await other.get(peopleOf(id))).status).toBe(404);
    const page = await tutor.get(peopleOf(id));
    expect(page.html.querySelectorAll('#tutor option').map(({ text }) => text)).toEqual(['Alma (Administrator)', 'Tobias (Tutor)']);
    expect((await onPeople(tutor, id, 'tutors', { tutor: await staffId('Tobias') })).words).toContain('The tutor is added.');
    const open = await other.get(peopleOf(id));
    expect(open.status).toBe(200);
    await onPeople(tutor, id, 'tutors/remove', { tutor: await staffId('Tobias') });
    expect((await other.get(peopleOf(id))).status).toBe(404);
    // A page that was open before does not help.
    expect((await other.submit(open, `${peopleOf(id)}/end`)).status).toBe(404);
    expect(await rowOf(id)).toMatchObject({ ended: false });
  });

  it('are never a candidate, nor nobody', async () => {
    const id = await makeClass(tutor, 'No candidate');
    await app.candidate('Odo the candidate');
    for (const wrong of [await staffId('Odo the candidate'), '999999']) await onPeople(tutor, id, 'tutors', { tutor: wrong });
    expect(await app.rows('SELECT person_id FROM class_tutor WHERE class_id = $1', [id])).toHaveLength(1);
  });

  it('never go all: the last one stays, also when two remove one another at the same moment', async () => {
    const id = await makeClass(tutor, 'Last tutor');
    const remove = `${peopleOf(id)}/tutors/remove`;
    expect((await tutor.get(peopleOf(id))).html.querySelector(`form[action="${remove}"]`)).toBeNull();
    const page = await onPeople(tutor, id, 'tutors', { tutor: await staffId('Tobias') });
    const [tessa, tobias] = [await staffId('Tessa'), await staffId('Tobias')];
    const hers = await other.get(peopleOf(id));
    // The class is held until both stand before it.
    const holder = await app.db.pool.connect();
    await holder.query('BEGIN');
    await holder.query('SELECT FROM study_class WHERE id = $1 FOR UPDATE', [id]);
    const both = Promise.all([tutor.submit(page, remove, { tutor: tobias }), other.submit(hers, remove, { tutor: tessa })]);
    const waiting = async () =>
      (await app.rows(`SELECT FROM pg_stat_activity WHERE datname = current_database() AND wait_event_type = 'Lock'`)).length;
    await expect.poll(waiting).toBe(2);
    await holder.query('COMMIT');
    holder.release();
    expect((await both).map(({ location }) => location?.replace(/.*said=/, '')).sort()).toEqual(['last-tutor', 'tutor-removed']);
    expect(await app.rows('SELECT person_id FROM class_tutor WHERE class_id = $1', [id])).toHaveLength(1);
  });

  it('can go themselves, to their own first page', async () => {
    const id = await makeClass(tutor, 'Going');
    const page = await onPeople(tutor, id, 'tutors', { tutor: await staffId('Tobias') });
    const sent = await tutor.submit(page, `${peopleOf(id)}/tutors/remove`, { tutor: await staffId('Tessa') });
    expect(sent.location).toBe('/');
    expect((await tutor.get(peopleOf(id))).status).toBe(404);
    // The last one is told why nothing happened.
    const last = await other.get(peopleOf(id));
    const csrf = last.html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    const kept = await other.send('POST', `${peopleOf(id)}/tutors/remove`, { _csrf: csrf, tutor: await staffId('Tobias') });
    expect((await other.get(kept.location ?? '')).words).toContain('A class keeps its last tutor.');
  });
});

describe('a joining code', () => {
  it('is shown large and in fours with its address and last moment, and a new one ends it', async () => {
    const id = await makeClass(tutor, 'Codes');
    const first = await makeJoinCode(tutor, id, '7');
    const page = await tutor.get(peopleOf(id));
    expect(page.html.querySelector('p.code')?.text).toMatch(/^[2-9A-HJKMNP-Z]{4} [2-9A-HJKMNP-Z]{4}$/);
    expect(page.words).toContain('Good until Wednesday 2 December 2026 at 19:00.');
    expect(page.words).toContain('At http://localhost:80/join');
    const second = await makeJoinCode(tutor, id, '30');
    expect(second).not.toBe(first);
    expect((await app.visitor('10.9.0.2').get(`/join/${first}`)).status).toBe(404);
    expect((await app.visitor('10.9.0.2').get(`/join/${second}`)).status).toBe(200);
    await onPeople(tutor, id, 'code', { what: 'close', days: '7' });
    expect((await app.visitor('10.9.0.2').get(`/join/${second}`)).status).toBe(404);
  });

  it.each([
    ['1', 86_400_000],
    ['7', 7 * 86_400_000],
    ['30', 30 * 86_400_000],
  ])('is good for %s days and not a moment longer, and whoever joined stays', async (days, length) => {
    const id = await makeClass(tutor, `Good ${days}`);
    const code = await makeJoinCode(tutor, id, days);
    const odo = await app.candidate(`Odo ${days}`);
    app.clock.forward(length - 1);
    expect((await joinWith(odo, code)).words).toContain('You are in the class.');
    app.clock.forward(1);
    expect((await app.visitor('10.9.0.3').get(`/join/${code}`)).status).toBe(404);
    app.clock.set('2026-11-25T19:00:00Z');
    expect(membersOn(await tutor.get(peopleOf(id)))).toEqual([`Odo ${days}`]);
  });

  it('can be kept for longer, also when it has run out, so that printed slips stay good', async () => {
    const id = await makeClass(tutor, 'Longer');
    const code = await makeJoinCode(tutor, id, '1');
    await onPeople(tutor, id, 'code', { what: 'keep', days: '30' });
    app.clock.forward(20 * 86_400_000);
    expect((await app.visitor('10.9.0.4').get(`/join/${code}`)).status).toBe(200);
    app.clock.set('2026-11-25T19:00:00Z');
  });

  it('for any other number of days, or any other wish, is refused', async () => {
    const id = await makeClass(tutor, 'Refused');
    for (const fields of [{ what: 'new', days: '365' }, { what: 'mine', days: '7' }, { days: '7' }])
      expect((await onPeople(tutor, id, 'code', fields)).status).toBe(400);
    expect(codeOn(await tutor.get(peopleOf(id)))).toBe('');
  });
});

describe('candidates of a class', () => {
  it('are listed with their days, by name, and hostile names are text', async () => {
    const id = await makeClass(tutor, 'H. <Vane>’s {{class}}');
    await addNames(tutor, id, 'Zelda\r\n\r\n<img src=x onerror=a()>\r\nadam');
    const page = await tutor.get(peopleOf(id));
    expect(membersOn(page)).toEqual(['<img src=x onerror=a()>', 'adam', 'Zelda']);
    expect([page.html.querySelector('img'), page.html.querySelector('h1')?.text]).toEqual([null, 'People in H. <Vane>’s {{class}}']);
    const cells = page.html.querySelectorAll('tbody tr')[1]?.querySelectorAll('td') ?? [];
    expect(cells.map(({ text }) => text)).toEqual(['25 Nov 2026', 'never yet']);
  });

  it('move to another class of the same tutor with their extra time, and pressing twice changes nothing', async () => {
    const [from, to, foreign] = [await makeClass(tutor, 'From'), await makeClass(tutor, 'To'), await makeClass(other, 'Foreign')];
    await addNames(tutor, from, 'Mungo');
    await app.rows('UPDATE class_member SET extra_time = 25 WHERE class_id = $1', [from]);
    const link = personLink(await tutor.get(peopleOf(from)), 'Mungo');
    const page = await tutor.get(link);
    const offered = page.html.querySelectorAll('#to option').map(({ text }) => text);
    expect(offered).toContain('To');
    expect(offered).not.toContain('Foreign');
    expect(offered).not.toContain('From');
    expect((await tutor.submit(page, `${link}/move`, { to: String(foreign) })).status).toBe(404);
    for (const _ of [1, 2])
      expect((await tutor.submit(page, `${link}/move`, { to: String(to) })).location).toBe(`${peopleOf(from)}?said=moved`);
    expect(membersOn(await tutor.get(peopleOf(from)))).toEqual([]);
    expect(membersOn(await tutor.get(peopleOf(to)))).toEqual(['Mungo']);
    expect(
      await app.rows('SELECT class_id, extra_time FROM class_member JOIN person p ON p.id = person_id WHERE display_name = $1', ['Mungo']),
    ).toEqual([{ class_id: to, extra_time: 25 }]);
    expect((await tutor.get(link)).status).toBe(404);
  });

  it('are taken out and keep account and answers; the page says so before, and again after', async () => {
    const id = await makeClass(tutor, 'Out');
    const [words] = (await addNames(tutor, id, 'Nettie')).values();
    const nettie = app.visitor('10.9.0.5');
    const back = await nettie.submit(await nettie.get('/return'), '/return', { phrase: (words ?? []).join(' ') });
    expect(back.location).toBe('/');
    const link = personLink(await tutor.get(peopleOf(id)), 'Nettie');
    const page = await tutor.get(link);
    expect(page.html.querySelector('details')).not.toBeNull();
    for (const _ of [1, 2]) {
      const sent = await tutor.submit(page, `${link}/remove`);
      expect((await tutor.get(sent.location ?? '')).words).toContain('The candidate is not in this class any more.');
    }
    expect((await nettie.get('/')).status).toBe(200);
    expect((await nettie.get('/my-classes')).words).toContain('You are in no class.');
  });

  it('are told apart: a name that stands there twice or is in the class already is asked about, and nothing is lost', async () => {
    const id = await makeClass(tutor, 'Names');
    await addNames(tutor, id, 'Anna');
    for (const [names, why] of [
      ['Bert\nbert', '“bert” stands there twice.'],
      ['Bert\nANNA', 'There is a ANNA in this class already.'],
      [' \n \n', 'Write a name, or several'],
      [`Bert\n${'x'.repeat(41)}`, 'The name on line 2 is too long.'],
      ['Bert\n\nB\u0007ob', 'The name on line 3 holds a sign'],
      [Array.from({ length: 31 }, (_, index) => `Name ${index}`).join('\n'), 'Those are 31 names. Up to thirty'],
    ] as const) {
      const back = await onPeople(tutor, id, 'add', { names });
      expect(back.status, why).toBe(422);
      expect(back.html.querySelector('.plate.no a')?.text).toContain(why);
      expect(back.html.querySelector('#names')?.text.trim()).toBe(names.trim());
    }
    expect(membersOn(await tutor.get(peopleOf(id)))).toEqual(['Anna']);
  });
});

describe('an administrator', () => {
  it('keeps every class, and adds another tutor to one that has none left', async () => {
    const id = await makeClass(other, 'Orphan');
    await app.rows('DELETE FROM class_tutor WHERE class_id = $1', [id]);
    const page = await onPeople(administrator, id, 'tutors', { tutor: await staffId('Tessa') });
    expect(page.html.querySelectorAll('.people li').map(({ text }) => text.trim().replace(/\s+/g, ' '))).toEqual(['Tessa (Tutor)']);
    expect((await tutor.get(peopleOf(id))).status).toBe(200);
  });
});
