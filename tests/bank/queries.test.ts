import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { testApp, type Shown, type TestApp, type Visitor } from '../support/app.js';
import { answer, rightFields } from '../support/answering.js';
import { staffOf } from '../support/staff.js';

/** A candidate thinks that a question is wrong; a tutor answers; the candidate reads it. */

let app: TestApp;
let tutor: Visitor;
let administrator: Visitor;
beforeAll(async () => {
  app = await testApp();
  ({ tutor, administrator } = await staffOf(app));
});
afterAll(() => app.close());

let people = 0;
async function candidate(name = 'Odo'): Promise<Visitor> {
  const visitor = app.visitor(`10.1.0.${(people += 1)}`);
  await visitor.start(name);
  return visitor;
}

/** Answers a question and follows the link that is under its outcome. */
async function raiseForm(visitor: Visitor): Promise<Shown> {
  const round = await visitor.round('10');
  const page = await visitor.get(round);
  const outcome = await answer(visitor, page, rightFields(page));
  const link = outcome.html.querySelectorAll('a').find((each) => each.text === 'Something seems wrong with this question');
  return await visitor.get((link?.getAttribute('href') ?? '').replaceAll('&amp;', '&'));
}
const raise = async (visitor: Visitor, body: string): Promise<Shown> =>
  await visitor.submit(await raiseForm(visitor), '/queries', { body });

describe('a query', () => {
  it('is raised from the page after an answer, answered by a tutor, and read by whoever raised it', async () => {
    const odo = await candidate();
    const form = await raiseForm(odo);
    expect(form.words).toMatch(/What seems wrong with this question\? \S/);
    const sent = await odo.submit(form, '/queries', { body: 'My meter says\r\n\r\nsomething else.' });
    expect(sent.status).toBe(303);
    const address = sent.location ?? '';
    expect((await odo.get(address)).words).toContain('A tutor will look at it.');
    expect((await odo.get(address)).html.querySelector('textarea')).toBeNull();

    expect((await tutor.get('/queries')).words).toContain('One query waits for an answer');
    expect((await tutor.get('/bank')).words).toContain('1 query waits for an answer');
    const page = await tutor.get(address);
    expect(page.html.querySelectorAll('main section p').map(({ text }) => text)).toEqual(['My meter says', 'something else.']);
    const question = page.html.querySelector('a[href^="/bank/questions/"]')?.getAttribute('href') ?? '';
    expect((await tutor.get(question)).words).toContain('My meter says something else.');
    expect((await tutor.submit(page, `${address}/answer`, { answer: 'Your meter needs a new battery.' })).status).toBe(303);

    expect((await odo.get('/')).words).toContain('A tutor has answered your query.');
    const answered = await odo.get(address);
    expect(answered.words).toContain('Answer by Tessa');
    expect(answered.words).toContain('Your meter needs a new battery.');
    expect((await odo.get('/')).words).not.toContain('A tutor has answered your query.');
    expect((await tutor.get('/queries')).words).toContain('Every query is answered');
  });

  it('shows the one who raises it nothing of the key', async () => {
    const odo = await candidate();
    const form = await raiseForm(odo);
    expect(form.text).not.toMatch(/Key of|Wrong one of|Explanation of/);
  });

  it('is seen by its own candidate and by tutors, and by nobody else', async () => {
    const [odo, fenn] = [await candidate(), await candidate('Fenn')];
    const { location } = await raise(odo, 'Nobody else may read this.');
    expect((await fenn.get(location ?? '')).status).toBe(404);
    expect((await fenn.get('/queries')).words).toContain('You have raised no query');
    expect((await odo.get('/queries')).words).toContain('Nobody else may read this.');
    const sneaked = await odo.submit(await odo.get('/me'), '/me', {});
    expect(sneaked.status).not.toBe(500);
    expect((await odo.send('POST', `${location ?? ''}/answer`, { answer: 'I say so' })).status).toBe(403);
    expect((await app.rows("SELECT 1 FROM query WHERE answer = 'I say so'")).length).toBe(0);
  });

  it.each([
    ['', 'Write what seems wrong: a few words are enough.'],
    [' \n ', 'Write what seems wrong: a few words are enough.'],
    ['x'.repeat(2001), 'That is longer than 2,000 letters.'],
    ['bell \u0007', 'It holds a sign that cannot be kept.'],
  ])('%j comes back with what is wrong and all that was typed', async (body, why) => {
    const back = await raise(await candidate(), body);
    expect(back.status).toBe(422);
    expect(back.words).toContain(why);
    expect(back.html.querySelector('textarea')?.text.trim()).toBe(body.trim());
  });

  it('that is sent twice is there once', async () => {
    const odo = await candidate();
    const form = await raiseForm(odo);
    const [first, second] = await Promise.all([
      odo.submit(form, '/queries', { body: 'Twice over.' }),
      odo.submit(form, '/queries', { body: 'Twice over.' }),
    ]);
    expect([first.status, second.status]).toEqual([303, 303]);
    expect(await app.rows("SELECT 1 FROM query WHERE body = 'Twice over.'")).toHaveLength(1);
  });

  it('cannot take the place of another’s', async () => {
    const [odo, fenn] = [await candidate(), await candidate('Fenn')];
    const { location } = await raise(odo, 'Mine.');
    const form = await raiseForm(fenn);
    const hidden = form.html.querySelector('input[name=query]');
    hidden?.setAttribute('value', (location ?? '').split('/').at(-1) ?? '');
    const sent = await fenn.submit(form, '/queries', { body: 'Not yours.' });
    expect(sent.status).toBe(422);
    expect((await odo.get(location ?? '')).words).toContain('Mine.');
  });

  it('beyond twenty that wait is not taken, and says so, with the text kept', async () => {
    const odo = await candidate();
    const form = await raiseForm(odo);
    const id = (await app.rows<{ id: number }>('SELECT max(id) AS id FROM person'))[0]?.id;
    await app.rows(
      "INSERT INTO query (id, question_id, revision, person_id, body, raised_at) SELECT gen_random_uuid(), (SELECT min(id) FROM question), 1, $1, 'x', now() FROM generate_series(1, 20)",
      [id],
    );
    const back = await odo.submit(form, '/queries', { body: 'The twenty-first.' });
    expect(back.status).toBe(422);
    expect(back.words).toContain('Twenty of your queries wait');
    expect(back.html.querySelector('textarea')?.text).toBe('The twenty-first.');
    await app.rows("DELETE FROM query WHERE body = 'x'");
  });

  it('about a question that does not exist is not found', async () => {
    const odo = await candidate();
    for (const query of ['question=99999&revision=1', 'question=1&revision=9', 'question=x', ''])
      expect((await odo.get(`/queries/new?${query}`)).status).toBe(404);
  });
});

describe('the answer to a query', () => {
  it('comes back when empty, and when another tutor answered meanwhile, with both texts on the page', async () => {
    const { location } = await raise(await candidate(), 'Which is it?');
    const address = location ?? '';
    const [mine, theirs] = [await tutor.get(address), await administrator.get(address)];
    const empty = await tutor.submit(mine, `${address}/answer`, { answer: ' ' });
    expect([empty.status, empty.words.includes('Write an answer first.')]).toEqual([422, true]);
    await administrator.submit(theirs, `${address}/answer`, { answer: 'It is the left one.' });
    const back = await tutor.submit(mine, `${address}/answer`, { answer: 'It is the right one.' });
    expect(back.status).toBe(422);
    expect(back.words).toContain('Somebody else answered meanwhile.');
    expect(back.words).toContain('It is the left one.');
    expect(back.html.querySelector('textarea')?.text).toBe('It is the right one.');
    expect((await tutor.submit(back, `${address}/answer`, { answer: 'It is the right one.' })).status).toBe(303);
    expect((await tutor.get(address)).words).toContain('Answer by Tessa');
  });

  it('pressed twice is taken once, without complaint', async () => {
    const { location } = await raise(await candidate(), 'Pressed twice?');
    const page = await tutor.get(location ?? '');
    for (let press = 0; press < 2; press += 1)
      expect((await tutor.submit(page, `${location ?? ''}/answer`, { answer: 'Yes.' })).status).toBe(303);
  });
});
