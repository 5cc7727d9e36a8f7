import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { replayAll } from '../../src/study/index.js';
import { testApp, type TestApp, type Visitor } from '../support/app.js';
import { beginPaper, choose, makePaper, rightLetter, sixPaper, withBlueprint, wrongLetter } from '../support/papers.js';

/** A candidate makes a paper, sits it against the server's clock, and hands it in. */

const minute = 60_000;

let app: TestApp;
beforeAll(async () => {
  app = await testApp({ start: '2026-11-25T19:00:00Z' });
  await withBlueprint(app);
});
afterAll(() => app.close());

const idOf = (sitting: string): string => sitting.split('/').at(-1) ?? '';
const rowOf = async (sitting: string) =>
  (
    await app.rows<{ right: number | null; passed: boolean | null; handed_in_at: Date | null; deadline_at: Date | null }>(
      'SELECT * FROM sitting WHERE id = $1',
      [idOf(sitting)],
    )
  )[0];
const sheetOf = (sitting: string) =>
  app.rows<{ position: number; choice: string | null; again: boolean; right: boolean | null }>(
    'SELECT * FROM sitting_answer WHERE sitting_id = $1 ORDER BY position',
    [idOf(sitting)],
  );
const answersOf = (sitting: string) =>
  app.rows<{ certainty: string; rating: number | null }>(
    'SELECT a.* FROM answer a JOIN sitting_answer s ON s.token = a.token WHERE s.sitting_id = $1',
    [idOf(sitting)],
  );

async function begun(visitor: Visitor): Promise<string> {
  const sitting = await makePaper(visitor);
  await beginPaper(visitor, sitting);
  return sitting;
}

describe('a paper of one’s own', () => {
  it('shows what it is and not one question before the clock runs', async () => {
    const visitor = await app.candidate();
    const sitting = await makePaper(visitor);
    const cover = await visitor.get(sitting);
    expect(cover.words).toContain('Questions6');
    expect(cover.words).toContain('10 minutes');
    expect(cover.text).not.toContain('Stem of');
    // Nor by another way in.
    for (const way of ['1', 'all', 'hand-in', 'result', 'review/1']) expect((await visitor.get(`${sitting}/${way}`)).status).toBe(303);
    expect(await rowOf(sitting)).toMatchObject({ deadline_at: null });
  });

  it('asks what its blueprint says, each question once', async () => {
    const visitor = await app.candidate();
    const sitting = await begun(visitor);
    const rows = await app.rows<{ topic: string; code: string }>(
      `SELECT t.code AS topic, q.code FROM paper_item i JOIN question q ON q.id = i.question_id JOIN topic t ON t.id = q.topic_id WHERE i.paper_id = $1`,
      [idOf(sitting)],
    );
    expect(new Set(rows.map(({ code }) => code)).size).toBe(6);
    const shares = Object.fromEntries(['AA', 'BB', 'CC'].map((topic) => [topic, rows.filter((row) => row.topic === topic).length]));
    expect(shares).toEqual(sixPaper.shares);
  });

  it('takes the place of one that was made and never begun, and of no other', async () => {
    const visitor = await app.candidate();
    const sat = await begun(visitor);
    await makePaper(visitor);
    await makePaper(visitor);
    const rows = await app.rows<{ id: string }>('SELECT id FROM sitting WHERE person_id = (SELECT max(id) FROM person)');
    expect(rows).toHaveLength(2);
    expect(rows.map(({ id }) => id)).toContain(idOf(sat));
    expect((await visitor.get('/papers')).html.querySelectorAll('.btn').filter(({ text }) => text.startsWith('Begin'))).toHaveLength(1);
  });

  it('is marked when it is handed in: right ones counted, blanks wrong, each question with its key, and a round on what was missed', async () => {
    const visitor = await app.candidate();
    const sitting = await begun(visitor);
    for (const place of [1, 2, 3, 4]) await choose(visitor, sitting, place, rightLetter(await visitor.get(`${sitting}/${place}`), place));
    await choose(visitor, sitting, 5, wrongLetter(await visitor.get(`${sitting}/5`), 5));
    const ask = await visitor.get(`${sitting}/hand-in`);
    expect(ask.words).toContain('One question is still blank.');
    const handed = await visitor.submit(ask, `${sitting}/hand-in`);
    const result = await visitor.get(handed.location ?? '');
    expect(result.html.querySelector('h1')?.text).toBe('4 of 6: passed');
    expect(result.words).toContain('Just what it takes: the pass mark is 4. You left 1 blank; a guess costs nothing.');
    // Lord's error of 4 of 6 is sqrt(4 x 2 / 5) = 1.26, so one mark either way.
    expect(result.words).toContain('between 3 and 5 on about three of four others like it');
    expect(result.html.querySelectorAll('.side form[action="/study/rounds"]').length).toBeGreaterThan(0);
    const review = await visitor.get(`${sitting}/review/5`);
    expect(review.html.querySelector('h1')?.text).toContain('Not right.');
    expect(review.words).toContain('Yours, not right');
    expect((await visitor.get(`${sitting}/review/6`)).words).toContain('You left it blank.');
    expect((await visitor.get(`${sitting}/review/7`)).status).toBe(404);
    expect((await visitor.get('/papers')).words).toContain('4 of 6, passed');
  });

  it('teaches the memory once, without certainty, and a blank teaches nothing; the record replays', async () => {
    const visitor = await app.candidate();
    const sitting = await begun(visitor);
    await choose(visitor, sitting, 1, rightLetter(await visitor.get(`${sitting}/1`), 1));
    await choose(visitor, sitting, 2, wrongLetter(await visitor.get(`${sitting}/2`), 2));
    const page = await visitor.get(`${sitting}/hand-in`);
    // Twice at the same moment.
    await Promise.all([visitor.submit(page, `${sitting}/hand-in`), visitor.submit(page, `${sitting}/hand-in`)]);
    const answers = await answersOf(sitting);
    // At first sight a right answer counts as recalled with doubt, and a wrong one as not known.
    expect(answers.map(({ certainty, rating }) => [certainty, rating]).sort()).toEqual([
      ['unsaid', 1],
      ['unsaid', 2],
    ]);
    const { people, answers: replayed, differences } = await replayAll(app.db, () => undefined);
    expect([people > 0, replayed > 0, differences]).toEqual([true, true, []]);
    const list = await visitor.get('/progress/answers');
    expect(list.words).toContain('on a paper');
    expect((await visitor.get(list.html.querySelector('.bank a')?.getAttribute('href') ?? '')).status).toBe(200);
  });
});

describe('the clock of a paper', () => {
  it('takes a choice at the last moment and none a thousandth of a second later, and says why', async () => {
    const visitor = await app.candidate();
    const sitting = await begun(visitor);
    const deadline = (await rowOf(sitting))?.deadline_at?.getTime() ?? 0;
    expect(deadline - app.clock.now().getTime()).toBe(10 * minute);
    const [first, second] = [await visitor.get(`${sitting}/1`), await visitor.get(`${sitting}/2`)];
    app.clock.set(new Date(deadline).toISOString());
    expect((await visitor.submit(first, `${sitting}/save`, { c1: 'A', go: '2' })).location).toBe(`${sitting}/2`);
    app.clock.forward(1);
    const late = await visitor.submit(second, `${sitting}/save`, { c2: 'A', go: '3' });
    expect(late.location).toBe(`${sitting}/result?late=1`);
    const result = await visitor.get(late.location ?? '');
    expect(result.words).toContain('Your last choice came after the end, so it does not count.');
    expect((await sheetOf(sitting)).map(({ position, choice }) => [position, choice])).toEqual([[1, 'A']]);
    expect((await rowOf(sitting))?.handed_in_at?.getTime()).toBe(deadline);
  });

  it('is the server’s: what the browser says of the time is not asked', async () => {
    const visitor = await app.candidate();
    const sitting = await begun(visitor);
    app.clock.forward(11 * minute);
    const late = await visitor.send(
      'POST',
      `${sitting}/save`,
      { w1: '', c1: 'A', now: '2026-11-25T19:00:01Z' },
      { date: 'Wed, 25 Nov 2026 19:00:01 GMT' },
    );
    expect([403, 303]).toContain(late.status);
    expect(await sheetOf(sitting)).toEqual([]);
  });

  it('gives extra time where it was asked for', async () => {
    const visitor = await app.candidate();
    const sitting = await makePaper(visitor, { extra: '25' });
    await beginPaper(visitor, sitting);
    expect(((await rowOf(sitting))?.deadline_at?.getTime() ?? 0) - app.clock.now().getTime()).toBe(12.5 * minute);
  });

  it('hands in what was saved when nobody does, and learns from it', async () => {
    const visitor = await app.candidate();
    const sitting = await begun(visitor);
    await choose(visitor, sitting, 1, rightLetter(await visitor.get(`${sitting}/1`), 1));
    app.clock.forward(60 * minute);
    expect((await visitor.get('/papers')).words).toContain('1 of 6, not passed');
    expect(await answersOf(sitting)).toHaveLength(1);
  });
});

describe('an answer sheet', () => {
  it('keeps what was marked to look at again, and what was chosen, for whoever comes back on another server', async () => {
    const visitor = await app.candidate();
    const sitting = await begun(visitor);
    await choose(visitor, sitting, 3, 'B', { a3: 'on' });
    visitor.app = await app.another();
    const page = await visitor.get(`${sitting}/3`);
    expect(page.html.querySelector('input[name=c3][checked]')?.getAttribute('value')).toBe('B');
    expect(page.html.querySelector('input[name=a3][checked]')).not.toBeNull();
    expect(page.words).toContain('1 saved, 5 to go.');
  });

  it('is not set back by a page that is old in another tab', async () => {
    const visitor = await app.candidate();
    const sitting = await begun(visitor);
    const old = await visitor.get(`${sitting}/all`);
    await choose(visitor, sitting, 1, 'B');
    // The old page knows nothing of that, and adds an answer to another question.
    await visitor.submit(old, `${sitting}/save`, { c2: 'C', go: 'all' });
    expect((await sheetOf(sitting)).map(({ position, choice }) => [position, choice])).toEqual([
      [1, 'B'],
      [2, 'C'],
    ]);
  });

  it('answers a script in short', async () => {
    const visitor = await app.candidate();
    const sitting = await begun(visitor);
    const page = await visitor.get(`${sitting}/1`);
    const _csrf = page.html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    const script = { accept: 'application/json' };
    const saved = await visitor.send('POST', `${sitting}/save`, { _csrf, w1: '', c1: 'A' }, script);
    expect([saved.status, JSON.parse(saved.text)]).toEqual([200, { saved: true }]);
    app.clock.forward(11 * minute);
    const late = await visitor.send('POST', `${sitting}/save`, { _csrf, w2: '', c2: 'A' }, script);
    expect([late.status, JSON.parse(late.text)]).toEqual([409, { saved: false, href: `${sitting}/result?late=1` }]);
  });

  it.each([
    ['a letter the question does not have', { w1: '', c1: 'F' }],
    ['no letter at all', { w1: '', c1: '<b>' }],
    ['a question the paper does not have', { w99: '', c99: 'A' }],
    ['a choice without its question', { c1: 'A' }],
  ])('refuses %s, and keeps nothing', async (_what, fields) => {
    const visitor = await app.candidate();
    const sitting = await begun(visitor);
    const page = await visitor.get(`${sitting}/1`);
    const _csrf = page.html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    expect((await visitor.send('POST', `${sitting}/save`, { _csrf, ...(fields as Record<string, string>) })).status).toBe(400);
    expect(await sheetOf(sitting)).toEqual([]);
  });

  it('that was tampered with leaves a line in the log, without a name', async () => {
    const lines: string[] = [];
    const logged = await testApp({
      start: '2026-11-25T19:00:00Z',
      logger: { level: 'warn', stream: { write: (line: string) => void lines.push(line) } },
    });
    await withBlueprint(logged);
    const visitor = await logged.candidate('Bryony');
    const sitting = await begun(visitor);
    const page = await visitor.get(`${sitting}/1`);
    const _csrf = page.html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    await visitor.send('POST', `${sitting}/save`, { _csrf, w1: '', c1: 'F' });
    const told = lines.filter((line) => line.includes('form-not-understood'));
    expect(told).toHaveLength(1);
    expect(told[0]).toContain('a letter or a question that the paper does not have');
    expect(lines.join('')).not.toContain('Bryony');
    await logged.close();
  });

  it('is nobody else’s', async () => {
    const owner = await app.candidate();
    const sitting = await begun(owner);
    const other = await app.candidate('Tansy');
    const page = await other.get('/papers');
    const _csrf = page.html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    for (const way of ['', '/1', '/all', '/hand-in', '/result', '/review/1'])
      expect((await other.get(`${sitting}${way}`)).status).toBe(404);
    for (const way of ['/begin', '/save', '/hand-in'])
      expect((await other.send('POST', `${sitting}${way}`, { _csrf, w1: '', c1: 'A', pages: 'one' })).status).toBe(404);
    expect(await sheetOf(sitting)).toEqual([]);
  });
});

describe('a blueprint that the pack cannot fill', () => {
  it('is not offered, with the topic that lacks something and how many', async () => {
    const own = await testApp({ start: '2026-11-25T19:00:00Z' });
    await withBlueprint(own, { ...sixPaper, id: 'six', questions: 9, shares: { AA: 6, BB: 3 } });
    const page = await (await own.candidate()).get('/papers');
    expect(page.words).toContain('AA Topic AA lacks 4: 6 asked, 2 there');
    expect(page.html.querySelector('select[name=paper]')).toBeNull();
    await own.close();
  });
});

describe('a class that hands in at one moment', () => {
  it('is marked whole, though no question is in memory yet and there are fewer connections than people', async () => {
    const sittings: { visitor: Visitor; sitting: string }[] = [];
    for (let each = 0; each < 24; each += 1) {
      const visitor = await app.candidate(`Candidate ${each}`);
      sittings.push({ visitor, sitting: await begun(visitor) });
    }
    const fresh = await app.another();
    const pages = await Promise.all(sittings.map(({ visitor, sitting }) => visitor.get(`${sitting}/hand-in`)));
    const sent = await Promise.all(
      sittings.map(({ visitor, sitting }, index) => {
        visitor.app = fresh;
        return visitor.submit(pages[index] as NonNullable<(typeof pages)[number]>, `${sitting}/hand-in`);
      }),
    );
    expect(new Set(sent.map(({ status }) => status))).toEqual(new Set([303]));
    const marked = await app.rows('SELECT FROM sitting WHERE handed_in_at IS NOT NULL AND id = ANY ($1)', [
      sittings.map(({ sitting }) => idOf(sitting)),
    ]);
    expect(marked).toHaveLength(24);
  });
});
