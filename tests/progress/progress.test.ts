import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { answer, rightFields, wrongFields } from '../support/answering.js';
import { testApp, type Shown, type TestApp, type Visitor } from '../support/app.js';

/** A candidate looks at what was learnt: ladders, what fades, whether sure means sure, time, and every answer. */

let app: TestApp;
beforeAll(async () => {
  app = await testApp({ start: '2026-11-25T19:00:00Z' });
});
afterAll(() => app.close());

/** @param seconds that pass before each answer */
async function answerAll(
  visitor: Visitor,
  fields: (page: Shown) => Record<string, string>,
  certainty: string,
  seconds = 20,
): Promise<number> {
  const round = await visitor.round('20');
  let answers = 0;
  for (let page = await visitor.get(round); page.status === 200; page = await visitor.get(round)) {
    app.clock.forward(seconds * 1000);
    await answer(visitor, page, fields(page), certainty);
    answers += 1;
  }
  return answers;
}

const states = (page: Shown): string[] => page.html.querySelectorAll('.ladder .state').map(({ text }) => text);
const tableOf = (page: Shown, caption: string): string[][] => {
  const table = page.html.querySelectorAll('table').find((each) => each.querySelector('caption')?.text === caption);
  return (table?.querySelectorAll('tbody tr') ?? []).map((row) => row.querySelectorAll('th, td').map(({ text }) => text.trim()));
};

describe('the page of progress', () => {
  it('has every rung not yet for somebody who is new, and says what is not known', async () => {
    const page = await (await app.candidate()).get('/progress');
    expect(page.html.querySelector('h1')?.text).toMatch(/^0 of \d+ rungs firm$/);
    expect(new Set(states(page))).toEqual(new Set(['not yet']));
    expect(page.words).toContain('Nothing within a week.');
    expect(page.words).toContain('Too few answers yet that you were sure of');
    expect(page.words).toContain('Nothing yet: time is counted from your answers.');
    expect(page.html.querySelector('svg.chart')).toBeNull();
  });

  it('has rungs firm after right answers, and says what will fade', async () => {
    const visitor = await app.candidate();
    await answerAll(visitor, rightFields, 'sure');
    const page = await visitor.get('/progress');
    expect(new Set(states(page))).toEqual(new Set(['firm']));
    expect(page.words).toMatch(/: (tomorrow|in \d days|on \w+ \d+ \w+) \d+ questions?/);
    expect(page.html.querySelectorAll('svg.chart')).toHaveLength(2);
  });

  it('has rungs loose after sure wrong answers, and says so beside them', async () => {
    const visitor = await app.candidate();
    await answerAll(visitor, wrongFields, 'sure');
    const page = await visitor.get('/progress');
    expect(states(page)).not.toContain('firm');
    expect(page.words).toContain('sure of a wrong answer here');
  });

  it('counts by certainty what the record holds', async () => {
    const visitor = await app.candidate();
    await answerAll(visitor, rightFields, 'fairly');
    const [row] = await app.rows<{ answers: number; right: number }>(
      `SELECT count(*)::int AS answers, count(*) FILTER (WHERE "right")::int AS "right" FROM answer
       WHERE person_id = (SELECT max(id) FROM person) AND rating IS NOT NULL`,
    );
    const rows = tableOf(await visitor.get('/progress'), 'Right answers by how sure you were');
    expect(rows.map(([words]) => words)).toEqual(['Sure', 'Fairly sure', 'Guessing']);
    expect(rows[1]?.slice(1, 3)).toEqual([String(row?.answers), String(row?.right)]);
    expect(rows[0]?.slice(1)).toEqual(['0', '0', '']);
  });

  it('takes the time from the answers: half a minute for the first, from one to the next for the rest, pauses left out', async () => {
    const visitor = await app.candidate();
    // The first counts 30 s; then 170 s each.
    const answers = await answerAll(visitor, rightFields, 'fairly', 170);
    const minutes = Math.round((30 + (answers - 1) * 170) / 60);
    app.clock.forward(86_400_000);
    const page = await visitor.get('/progress');
    const weeks = tableOf(page, 'Time by week');
    expect(weeks).toHaveLength(4);
    expect(weeks.at(-1)?.slice(1)).toEqual([String(minutes), String(answers)]);
    expect(page.words).toContain('on 1 day in all');
  });

  it('is a candidate’s own and no one else’s', async () => {
    expect((await app.visitor('10.3.1.1').get('/progress')).status).toBe(401);
    const other = await (await app.candidate()).get('/progress/answers');
    expect(other.words).toContain('You have not answered anything yet.');
  });
});

describe('the list of answers', () => {
  it('has every answer with its day and leads to what was said of it', async () => {
    const visitor = await app.candidate();
    const answers = await answerAll(visitor, rightFields, 'sure');
    const page = await visitor.get('/progress/answers');
    expect(page.words).toContain(`${answers} answers.`);
    const links = page.html.querySelectorAll('.bank a');
    expect(links).toHaveLength(answers);
    const outcome = await visitor.get(links[0]?.getAttribute('href') ?? '');
    expect(outcome.status).toBe(200);
    expect(outcome.words).toContain('Right');
  });

  it('finds by code, by words and by verdict, and says when nothing fits', async () => {
    const visitor = await app.candidate();
    const answers = await answerAll(visitor, wrongFields, 'guessing');
    const code = (await visitor.get('/progress/answers')).html.querySelector('.bank .id')?.text ?? '';
    const found = await visitor.get(`/progress/answers?text=${encodeURIComponent(code)}`);
    expect(new Set(found.html.querySelectorAll('.bank .id').map(({ text }) => text))).toEqual(new Set([code]));
    expect((await visitor.get('/progress/answers?show=wrong')).words).toContain(`${answers} answers.`);
    expect((await visitor.get('/progress/answers?show=sure-wrong')).words).toContain('No answer of yours fits.');
    expect((await visitor.get('/progress/answers?text=zzzz')).words).toContain('Try fewer words.');
  });

  it('takes a strange address as nothing asked', async () => {
    const visitor = await app.candidate();
    for (const query of ['page=0', 'page=x', 'show=%00', `text=${'a'.repeat(500)}`, 'text=%25_%5C%22', 'page=1&page=2'])
      expect((await visitor.get(`/progress/answers?${query}`)).status, query).toBe(200);
    expect((await visitor.get('/progress/answers?page=99')).words).toContain('Go back to the later ones.');
  });
});
