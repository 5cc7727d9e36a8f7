import { randomUUID } from 'node:crypto';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { replayAll } from '../../src/study/index.js';
import { testApp, type Shown, type TestApp, type Visitor } from '../support/app.js';
import { chooseIn, classOf, elsewhere, held, makeEvening, rightOf, wrongOf, type TestClass } from '../support/evenings.js';

/** An evening is held: steps, choices on phones, hands, and what is recorded. The clock stands on Wednesday 25 November 2026. */

let app: TestApp;
let own: TestClass;
beforeAll(async () => {
  app = await testApp({ start: '2026-11-25T19:00:00Z' });
  own = await classOf(app);
});
afterAll(() => app.close());
beforeEach(async () => {
  app.clock.set('2026-11-25T19:00:00Z');
  await app.rows('DELETE FROM evening');
  await app.rows('DELETE FROM class_member');
});

const answersIn = (evening: string) =>
  app.rows<{
    name: string;
    choice: string;
    right: boolean | null;
    recorded: number;
    rating: number | null;
    certainty: string | null;
    given: string | null;
  }>(
    `SELECT p.display_name AS name, e.choice, e."right", count(a.token)::int AS recorded, max(a.rating) AS rating, max(a.certainty) AS certainty, max(a.given) AS given
     FROM evening_answer e JOIN person p ON p.id = e.person_id LEFT JOIN answer a ON a.token = e.token
     WHERE e.evening_id = $1 GROUP BY p.display_name, e.position, e.choice, e."right" ORDER BY e.position, p.display_name`,
    [evening],
  );
const allAnswers = async (): Promise<number> =>
  (await app.rows<{ count: number }>('SELECT count(*)::int AS count FROM answer'))[0]?.count ?? 0;
const changeOf = async (evening: string): Promise<number> =>
  (await app.rows<{ change: number }>('SELECT change FROM evening WHERE id = $1', [evening]))[0]?.change ?? 0;
const differences = async (): Promise<unknown[]> => (await replayAll(app.db, () => undefined)).differences;
const ownLine = (page: Shown): string => page.html.querySelector('[data-own]')?.text ?? '';

/** An evening with these questions, the first of them open. */
async function opened(questions = 'AA-01-001 BB-01-001'): Promise<{ evening: string; at: ReturnType<typeof held> }> {
  const evening = await makeEvening(own, { questions });
  const at = held(own, evening);
  await at.press('next');
  await at.press('open');
  return { evening, at };
}

describe('making an evening', () => {
  it('takes the questions that were named, in their order, and is made once however often its form is sent', async () => {
    await own.member('Odo');
    const list = `/classes/${own.classId}/evenings`;
    const page = await own.tutor.get(list);
    const fields = { id: randomUUID(), title: 'Fuses', questions: 'BB-02-001, AA-01-001', region: 'uk' };
    const sent = await Promise.all([1, 2, 3].map(() => own.tutor.submit(page, list, fields)));
    expect(sent.map(({ status }) => status)).toEqual([303, 303, 303]);
    const codes = await app.rows<{ code: string }>(
      'SELECT q.code FROM evening_item i JOIN question q ON q.id = i.question_id WHERE i.evening_id = $1 ORDER BY i.position',
      [fields.id],
    );
    expect(codes.map(({ code }) => code)).toEqual(['BB-02-001', 'AA-01-001']);
    expect((await own.tutor.get(list)).words).toContain('Fuses');
  });

  it('chooses what the class has most often wrong when nothing is named, one of each objective', async () => {
    await own.member('Odo');
    const [person] = await app.rows<{ id: number }>('SELECT max(id) AS id FROM person');
    // Sure and wrong on CC-02-001; wrong on BB-01-001 in a paper-like record; everything else never met.
    await app.rows(
      `UPDATE memory SET surely_wrong = true WHERE person_id = $1 AND question_id = (SELECT id FROM question WHERE code = 'CC-02-001')`,
      [person?.id],
    );
    await app.rows(
      `INSERT INTO answer (token, person_id, question_id, revision, seed, region, given, certainty, "right", day, answered_at, reps_after)
       SELECT gen_random_uuid(), $1, id, 1, 1, 'uk', '1', 'unsaid', false, 20000, now(), 0 FROM question WHERE code = 'BB-02-001'`,
      [person?.id],
    );
    const evening = await makeEvening(own, { questions: '', count: '4' });
    const rows = await app.rows<{ code: string; objective: string }>(
      `SELECT q.code, o.code AS objective FROM evening_item i JOIN question q ON q.id = i.question_id JOIN objective o ON o.id = q.objective_id
       WHERE i.evening_id = $1 ORDER BY i.position`,
      [evening],
    );
    expect(rows.map(({ code }) => code).slice(0, 2)).toEqual(['CC-02-001', 'BB-02-001']);
    expect(new Set(rows.map(({ objective }) => objective)).size).toBe(4);
  });

  it('begins with the questions of the plan’s link, and says what is left out', async () => {
    await own.member('Odo');
    const ids = await app.rows<{ id: number; code: string }>(
      `SELECT id, code FROM question WHERE code IN ('AA-02-001', 'nf-fuse') ORDER BY code`,
    );
    const page = await own.tutor.get(`/classes/${own.classId}/evenings?questions=${ids.map(({ id }) => id).join(',')},99999`);
    expect(page.html.querySelector('#questions')?.text).toBe(ids.map(({ code }) => code).join('\n'));
    expect(page.words).toContain('1 question of the plan is left out');
    for (const odd of ['questions=1;2', 'questions=', 'questions=1&questions=2', 'questions=abc'])
      expect((await own.tutor.get(`/classes/${own.classId}/evenings?${odd}`)).status, odd).toBe(200);
  });

  it.each([
    ['an unknown code', { questions: 'AA-01-001 ZZ-01' }, '“ZZ-01” is no question, objective or topic of the bank.'],
    ['a question of another region', { questions: 'nf-fuse', region: 'na' }, 'nf-fuse is not asked where that mains supply is used.'],
    ['a family with too few mistakes to choose from', { questions: 'nf-twice' }, 'nf-twice has too few options to choose from.'],
    ['no name', { title: '  ' }, 'Give it a name, such as Ladders and fuses.'],
    ['too many', { count: '21' }, 'An evening has from 1 to 20 questions.'],
    ['no number', { count: 'six' }, 'Write a whole number from 1 to 20.'],
  ])('is refused with %s, and nothing typed is lost', async (_what, wrong, words) => {
    const list = `/classes/${own.classId}/evenings`;
    const fields = {
      id: randomUUID(),
      title: 'Fuses',
      questions: 'AA',
      count: '3',
      region: 'uk',
      'topic-BB': 'on',
      ...(wrong as Record<string, string>),
    };
    const page = await own.tutor.submit(await own.tutor.get(list), list, fields);
    expect(page.status).toBe(422);
    expect(page.words).toContain(words);
    expect(page.html.querySelector('#questions')?.text).toBe(fields.questions);
    expect(page.html.querySelector('#title')?.getAttribute('value')).toBe(fields.title);
    expect(page.html.querySelector('input[name=topic-BB]')?.hasAttribute('checked')).toBe(true);
    expect(page.html.querySelector('select[name=region] option[selected]')?.getAttribute('value')).toBe(fields.region);
    expect(await app.rows('SELECT FROM evening')).toEqual([]);
  });

  it('fills the rest from the topics that are ticked', async () => {
    const evening = await makeEvening(own, { questions: 'AA-01-001', count: '3', 'topic-CC': 'on' });
    const rows = await app.rows<{ topic: string }>(
      'SELECT t.code AS topic FROM evening_item i JOIN question q ON q.id = i.question_id JOIN topic t ON t.id = q.topic_id WHERE i.evening_id = $1 ORDER BY i.position',
      [evening],
    );
    expect(rows.map(({ topic }) => topic)).toEqual(['AA', 'CC', 'CC']);
  });
});

describe('a question on phones', () => {
  it('is answered and changed while it is open, shown with the counts, and recorded once for each', async () => {
    const [odo, tansy] = [await own.member('Odo'), await own.member('Tansy')];
    const evening = await makeEvening(own, { questions: 'AA-01-001 BB-01-001' });
    const at = held(own, evening);
    expect((await odo.get('/evening')).words).toContain('No class evening has begun yet');
    expect((await odo.get(`/evening/${evening}`)).words).toContain('Ladders and fuses has not begun yet');
    expect((await odo.get('/')).words).not.toContain('Come in: Ladders and fuses');
    await at.press('next');
    expect((await odo.get('/evening')).location).toBe(`/evening/${evening}`);
    expect((await odo.get('/')).words).toContain('Come in: Ladders and fuses is running in Thursday beginners');
    const waiting = await odo.get(`/evening/${evening}`);
    expect(ownLine(waiting)).toBe('Your tutor has not opened this question yet. Think first.');
    expect(waiting.html.querySelectorAll('form')).toHaveLength(0);
    await at.press('open');
    const page = await odo.get(`/evening/${evening}`);
    const [right, wrong] = [rightOf(page), wrongOf(page)];
    expect((await chooseIn(odo, evening, wrong)).location).toBe(`/evening/${evening}`);
    expect(ownLine(await odo.get(`/evening/${evening}`))).toBe(
      `Your answer: ${wrong}. You can change it until the tutor closes the question.`,
    );
    await chooseIn(odo, evening, right);
    await chooseIn(tansy, evening, wrong);
    expect((await at.control()).words).toContain('2 of 2 have answered.');
    expect((await at.screen()).words).toContain('2 of 2 have answered.');
    const before = await allAnswers();
    await at.press('close');
    expect(await allAnswers()).toBe(before + 2);
    expect(await answersIn(evening)).toMatchObject([
      { name: 'Odo', choice: right, right: true, recorded: 1, rating: 2, certainty: 'unsaid' },
      { name: 'Tansy', choice: wrong, right: false, recorded: 1, rating: 1, certainty: 'unsaid' },
    ]);
    expect(ownLine(await odo.get(`/evening/${evening}`))).toBe(
      `The question is closed. Your answer: ${right}. Wait until your tutor shows the answer.`,
    );
    // Nor is it told in the list of one's own answers before it is shown.
    expect((await odo.get('/progress/answers')).words).toContain('You have not answered anything yet.');
    expect((await tansy.get('/progress/answers?show=wrong')).html.querySelectorAll('.bank li')).toHaveLength(0);
    await at.press('show');
    expect((await tansy.get('/progress/answers?show=wrong')).words).toContain('1 answer.');
    const [mine, hers] = [await odo.get(`/evening/${evening}`), await tansy.get(`/evening/${evening}`)];
    expect(mine.html.querySelector('h1')?.text).toContain('Right.');
    expect(hers.html.querySelector('h1')?.text).toContain('Not right.');
    expect(hers.words).toContain('Explanation of AA-01-001.');
    expect(hers.words).toContain('Stop and ask a competent person.');
    expect(mine.text).not.toContain('Tansy');
    expect(await differences()).toEqual([]);
  });

  it('is closed to whoever comes late, who is told so and loses nothing', async () => {
    const [odo, tansy] = [await own.member('Odo'), await own.member('Tansy')];
    const { evening, at } = await opened();
    const page = await odo.get(`/evening/${evening}`);
    await chooseIn(odo, evening, 'A', page);
    const other = await tansy.get(`/evening/${evening}`);
    await at.press('close');
    const late = await chooseIn(odo, evening, 'B', page);
    expect(late.location).toBe(`/evening/${evening}?late=not-open&choice=B`);
    expect((await odo.get(late.location ?? '')).words).toContain(
      'The question was closed before B came, so it was not taken. Your answer stays A.',
    );
    const none = await chooseIn(tansy, evening, 'B', other);
    expect((await tansy.get(none.location ?? '')).words).toContain('so it was not taken. You have no answer to it.');
    expect((await answersIn(evening)).map(({ name, choice }) => [name, choice])).toEqual([['Odo', 'A']]);
    // The script is told the same in short.
    const csrf = page.html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    const told = await odo.send(
      'POST',
      `/evening/${evening}/answer`,
      { _csrf: csrf, seen: '1', choice: 'C' },
      { accept: 'application/json' },
    );
    expect([told.status, JSON.parse(told.text)]).toEqual([
      409,
      { saved: false, choice: 'A', words: 'The question was closed before C came, so it was not taken. Your answer stays A.' },
    ]);
  });

  it('takes no letter that it does not have, and no question that is not before the class', async () => {
    const odo = await own.member('Odo');
    const { evening } = await opened();
    const page = await odo.get(`/evening/${evening}`);
    expect((await chooseIn(odo, evening, 'E', page)).status).toBe(400);
    expect((await chooseIn(odo, evening, 'a', page)).status).toBe(400);
    const csrf = page.html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    const send = (seen: string) => odo.send('POST', `/evening/${evening}/answer`, { _csrf: csrf, seen, choice: 'A' });
    expect((await send('2')).location).toContain('late=not-open');
    expect((await send('3')).status).toBe(400);
    expect(await answersIn(evening)).toEqual([]);
  });

  it('may be opened again: whoever was recorded stays so, and others may still answer', async () => {
    const [odo, tansy] = [await own.member('Odo'), await own.member('Tansy')];
    const { evening, at } = await opened();
    await chooseIn(odo, evening, 'A');
    await at.press('close');
    const before = await answersIn(evening);
    await at.press('open');
    const page = await odo.get(`/evening/${evening}`);
    expect(ownLine(page)).toBe('Your answer: A. It is recorded and stays.');
    expect(page.html.querySelectorAll('form')).toHaveLength(0);
    // From a page that was opened before.
    const csrf = (await tansy.get(`/evening/${evening}`)).html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    expect(csrf).not.toBe('');
    const own2 = (await odo.get('/')).html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    const stale = await odo.send('POST', `/evening/${evening}/answer`, { _csrf: own2, seen: '1', choice: 'B' });
    expect(stale.location).toBe(`/evening/${evening}?late=recorded&choice=B`);
    expect((await odo.get(stale.location ?? '')).words).toContain('is recorded already, so B was not taken. Your answer stays A.');
    await chooseIn(tansy, evening, 'B');
    await at.press('close');
    const after = await answersIn(evening);
    expect(after[0]).toEqual(before[0]);
    expect(after[1]).toMatchObject({ name: 'Tansy', choice: 'B', recorded: 1 });
    expect(await differences()).toEqual([]);
  });

  it('is marked as a family too, with one draw for all, and a memory that moved today stays', async () => {
    const [odo, tansy] = [await own.member('Odo'), await own.member('Tansy')];
    const { evening, at } = await opened('nf-fuse AA-01-001');
    const [one, two] = [await odo.get(`/evening/${evening}`), await tansy.get(`/evening/${evening}`)];
    expect(one.html.querySelector('.opts')?.text).toBe(two.html.querySelector('.opts')?.text);
    await chooseIn(odo, evening, rightOf(one));
    await chooseIn(tansy, evening, wrongOf(two));
    await at.press('close');
    expect((await answersIn(evening)).map(({ right, recorded, rating }) => [right, recorded, rating])).toEqual([
      [true, 1, 2],
      [false, 1, 1],
    ]);
    // A second evening on the same day asks it again: recorded, and no memory moves.
    await at.press('end');
    const again = await opened('nf-fuse');
    await chooseIn(odo, again.evening, rightOf(await odo.get(`/evening/${again.evening}`)));
    await again.at.press('close');
    expect((await answersIn(again.evening)).map(({ right, recorded, rating }) => [right, recorded, rating])).toEqual([[true, 1, null]]);
    expect(await differences()).toEqual([]);
    const shown = await again.at.press('show');
    expect((await own.tutor.get(shown.location?.split('#')[0] ?? '')).status).toBe(200);
  });
});

describe('pressing many times', () => {
  it('records each answer once under 24 presses of close at one moment on two servers, while choices still come', async () => {
    const people = await Promise.all(Array.from({ length: 12 }, (_, index) => own.member(`Member ${index}`)));
    const { evening, at } = await opened();
    const other = await app.another();
    const pages = await Promise.all(people.map((visitor) => visitor.get(`/evening/${evening}`)));
    await Promise.all(people.slice(0, 8).map((visitor, index) => chooseIn(visitor, evening, 'A', pages[index])));
    const before = await allAnswers();
    const changes = await changeOf(evening);
    const control = await at.control();
    const there = elsewhere(own.tutor, other);
    const presses = Array.from({ length: 24 }, (_, index) =>
      (index % 2 === 0 ? own.tutor : there).submit(control, `${at.root}/step`, { do: 'close' }),
    );
    const late = people.slice(6).map((visitor, index) => chooseIn(visitor, evening, 'B', pages[index + 6]));
    const done = await Promise.all(presses);
    const sent = await Promise.all(late);
    expect(new Set(done.map(({ status, location }) => `${status} ${location}`))).toEqual(new Set([`303 ${at.root}#steps`]));
    const rows = await app.rows<{ choice: string; right: boolean | null; token: string | null }>(
      'SELECT choice, "right", token FROM evening_answer WHERE evening_id = $1',
      [evening],
    );
    expect(rows.every(({ right, token }) => right !== null && token !== null)).toBe(true);
    // The step was taken once.
    expect(await changeOf(evening)).toBe(changes + 1);
    // What was acknowledged is there, and nothing that was refused.
    const taken = sent.filter(({ location }) => location === `/evening/${evening}`).length;
    expect(rows.filter(({ choice }) => choice === 'B')).toHaveLength(taken);
    expect(await allAnswers()).toBe(before + rows.length);
    expect(await differences()).toEqual([]);
  });

  it('a choice waits for a closing that is under way, and comes too late', async () => {
    const odo = await own.member('Odo');
    const { evening } = await opened();
    const page = await odo.get(`/evening/${evening}`);
    const closing = await app.db.pool.connect();
    await closing.query('BEGIN');
    await closing.query(`UPDATE evening_item SET state = 'closed' WHERE evening_id = $1 AND position = 1`, [evening]);
    const sent = chooseIn(odo, evening, 'A', page);
    await wait(300);
    await closing.query('COMMIT');
    closing.release();
    expect((await sent).location).toBe(`/evening/${evening}?late=not-open&choice=A`);
    expect(await answersIn(evening)).toEqual([]);
  });

  it('a closing waits for a choice that is under way, and records it', async () => {
    await own.member('Odo');
    const { evening, at } = await opened();
    const saving = await app.db.pool.connect();
    await saving.query('BEGIN');
    await saving.query(`SELECT FROM evening_item WHERE evening_id = $1 AND position = 1 FOR SHARE`, [evening]);
    await saving.query(
      `INSERT INTO evening_answer (evening_id, position, person_id, choice, saved_at) SELECT $1, 1, max(id), 'A', now() FROM person`,
      [evening],
    );
    const pressed = at.press('close');
    await wait(300);
    await saving.query('COMMIT');
    saving.release();
    await pressed;
    expect(await answersIn(evening)).toMatchObject([{ name: 'Odo', choice: 'A', recorded: 1 }]);
  });

  it('moves on once when next is pressed in two windows, and says so in a third that is older', async () => {
    const { at } = await opened();
    const old = await at.control();
    await at.press('close');
    await at.press('show');
    const page = await at.control();
    const both = await Promise.all([1, 2].map(() => own.tutor.submit(page, `${at.root}/step`, { do: 'next' })));
    expect(both.map(({ location }) => location)).toEqual([`${at.root}#steps`, `${at.root}#steps`]);
    expect((await at.control()).html.querySelector('h1')?.text).toBe('Ladders and fuses: question 2 of 2');
    const moved = await own.tutor.submit(old, `${at.root}/step`, { do: 'close' });
    expect((await own.tutor.get(moved.location?.replace('#steps', '') ?? '')).words).toContain(
      'Another page had moved on, so nothing was changed.',
    );
  });
});

describe('hands', () => {
  it('are counted with the phones when the counts are shown, and are nobody’s answers', async () => {
    const people = [];
    for (const name of ['Odo', 'Tansy', 'Wilf', 'Wren', 'Zelda']) people.push(await own.member(name));
    const { evening, at } = await opened();
    const page = await (people[0] as Visitor).get(`/evening/${evening}`);
    const [right, wrong] = [rightOf(page), wrongOf(page)];
    for (const visitor of people) await chooseIn(visitor, evening, right);
    const recorded = await allAnswers();
    await at.press('close', { [`hand-${right}`]: '4', [`hand-${wrong}`]: '3' });
    await at.press('show');
    const screen = await at.screen();
    const counts = Object.fromEntries(
      screen.html
        .querySelectorAll('.wall-opts .opt')
        .map((option) => [option.querySelector('.balloon')?.text, option.querySelector('.count b')?.text.replace('Chosen: ', '')]),
    );
    expect([counts[right], counts[wrong]]).toEqual(['9', '3']);
    expect(screen.words).toContain('5 on phones and 7 hands.');
    expect(screen.html.querySelectorAll('.wall-opts .key .balloon').map(({ text }) => text)).toEqual([right]);
    expect(await allAnswers()).toBe(recorded + 5);
    expect((await at.control()).words).toContain('9 of 12 right');
  });

  it('can be counted without any phone, and corrected afterwards', async () => {
    const evening = await makeEvening(own, { questions: 'AA-01-001' });
    const at = held(own, evening);
    await at.press('next');
    await at.press('show', { 'hand-A': '2' });
    expect((await at.screen()).words).toContain('2 hands, nobody on a phone.');
    await at.press('hands', { 'hand-A': '3' });
    expect((await at.screen()).words).toContain('3 hands, nobody on a phone.');
  });

  it('of a page that is old take back nothing that was counted on another', async () => {
    const { at } = await opened();
    const old = await at.control();
    await at.press('hands', { 'hand-A': '7' });
    await own.tutor.submit(old, `${at.root}/step`, { do: 'close' });
    expect((await at.control()).html.querySelector('#hand-A')?.getAttribute('value')).toBe('7');
  });

  it('that are no numbers are refused with the step, and come back as typed', async () => {
    const { at } = await opened();
    const page = await at.press('close', { 'hand-A': 'four', 'hand-B': '2' });
    expect(page.status).toBe(422);
    expect(page.words).toContain('“four” is no number of hands');
    expect([page.html.querySelector('#hand-A')?.getAttribute('value'), page.html.querySelector('#hand-B')?.getAttribute('value')]).toEqual([
      'four',
      '2',
    ]);
    expect((await at.control()).words).toContain('Open for answers on phones.');
  });
});

describe('what changes meanwhile', () => {
  async function chosen(): Promise<{ odo: Visitor; evening: string; at: ReturnType<typeof held> }> {
    const odo = await own.member('Odo');
    const { evening, at } = await opened();
    await chooseIn(odo, evening, 'A');
    return { odo, evening, at };
  }

  it('a member who is removed is told so, can answer no more, and keeps what was answered', async () => {
    const { odo, evening, at } = await chosen();
    const page = await odo.get(`/evening/${evening}`);
    await app.rows('DELETE FROM class_member');
    expect((await odo.get(`/evening/${evening}`)).words).toContain('You are not in this class any more');
    expect((await chooseIn(odo, evening, 'B', page)).location).toContain('late=not-open');
    expect((await odo.get('/evening')).words).toContain('No class evening is on');
    await at.press('close');
    expect(await answersIn(evening)).toMatchObject([{ choice: 'A', recorded: 1 }]);
    expect(await differences()).toEqual([]);
  });

  it('an evening that is ended while its question is open records what was answered', async () => {
    const { odo, evening, at } = await chosen();
    const page = await odo.get(`/evening/${evening}`);
    await at.press('end');
    expect(await answersIn(evening)).toMatchObject([{ choice: 'A', recorded: 1 }]);
    const over = await odo.get(`/evening/${evening}`);
    expect(over.html.querySelector('h1')?.text).toBe('This evening is over');
    expect(over.words).toMatch(/You answered 1 of 2 on your phone, [01] of them right/);
    expect((await chooseIn(odo, evening, 'B', page)).location).toContain('late=not-open');
    const review = await odo.get(`/evening/${evening}/1`);
    expect(review.words).toContain('Explanation of AA-01-001.');
    // In the list of all answers too, and it leads there.
    const list = await odo.get('/progress/answers');
    const link = list.html.querySelectorAll('a').find((each) => each.getAttribute('href')?.startsWith('/evening/'));
    expect(link?.getAttribute('href')).toBe(`/evening/${evening}/1`);
    expect(list.words).toContain('at a class evening');
    expect((await at.control()).words).toContain('This evening is over.');
    const refused = await own.tutor.submit(await own.tutor.get(`/classes/${own.classId}/evenings`), `/classes/${own.classId}/evenings`, {
      id: evening,
      title: 'Again',
      region: 'uk',
    });
    expect(refused.location).toBe(at.root);
    expect(await app.rows('SELECT title FROM evening')).toEqual([{ title: 'Ladders and fuses' }]);
  });

  it('one that is left running ends by itself after twelve hours, with what was answered', async () => {
    const { odo, evening } = await chosen();
    app.clock.forward(11 * 3_600_000);
    expect(await app.work.closeOverdue()).toBe(0);
    app.clock.forward(3_600_001);
    await Promise.all([app.work.closeOverdue(), (await app.another()).work.closeOverdue()]);
    expect(await answersIn(evening)).toMatchObject([{ choice: 'A', recorded: 1 }]);
    expect((await odo.get('/')).words).not.toContain('Come in');
  });

  it('a question whose text is newer by now is asked as it was, and where its memory began afresh it is only marked', async () => {
    const odo = await own.member('Odo');
    // Odo has met the question before; then the pack's next revision makes it another one.
    const first = await opened('AA-01-001');
    await chooseIn(odo, first.evening, 'A');
    await first.at.press('end');
    app.clock.forward(3 * 86_400_000);
    // A tutor's session would be over by then.
    await app.rows('UPDATE session SET last_seen_at = $1', [app.clock.now()]);
    const { evening, at } = await opened('AA-01-001');
    await app.rows(`INSERT INTO question_revision (question_id, revision, body, content_hash)
      SELECT question_id, 2, jsonb_set(body || '{"revision": 2}', '{stem}', '"Quite another stem?"'), 'newer' FROM question_revision r JOIN question q ON q.id = r.question_id WHERE q.code = 'AA-01-001'`);
    await app.rows(`UPDATE question SET current_revision = 2 WHERE code = 'AA-01-001'`);
    await app.rows(
      `UPDATE memory SET stability = NULL, difficulty = NULL, last_day = NULL, due_day = NULL WHERE question_id = (SELECT id FROM question WHERE code = 'AA-01-001')`,
    );
    const page = await odo.get(`/evening/${evening}`);
    expect(page.words).toContain('Stem of AA-01-001?');
    await chooseIn(odo, evening, rightOf(page));
    await at.press('close');
    await at.press('show');
    expect(await answersIn(evening)).toMatchObject([{ right: true, recorded: 0 }]);
    expect((await odo.get(`/evening/${evening}`)).words).toContain('so it is not counted in your progress');
    expect(await differences()).toEqual([]);
    await app.rows(`UPDATE question SET current_revision = 1 WHERE code = 'AA-01-001'`);
    await app.rows('DELETE FROM question_revision WHERE revision = 2');
  });
});
