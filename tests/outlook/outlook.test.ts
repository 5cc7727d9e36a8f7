import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { tenths } from '../../src/outlook/words.js';
import { answer, isNumber, rightFields, wrongFields } from '../support/answering.js';
import { testApp, type Shown, type TestApp, type Visitor } from '../support/app.js';

/** A candidate answers every question of the small pack, and looks at the outlook for a paper drawn from it. */

const paper = { id: 'four', title: 'Four questions', questions: 4, passMark: 3, minutes: 5, shares: { AA: 2, BB: 2 } };

let app: TestApp;
beforeAll(async () => {
  app = await testApp({ start: '2026-11-25T19:00:00Z' });
  await app.rows('UPDATE pack SET blueprints = $1', [JSON.stringify([paper])]);
});
afterAll(() => app.close());

async function answerAll(visitor: Visitor, fields: (page: Shown) => Record<string, string>): Promise<void> {
  const round = await visitor.round('20');
  for (let page = await visitor.get(round); page.status === 200; page = await visitor.get(round)) await answer(visitor, page, fields(page));
}

const kept = (): Promise<{ low: number; high: number; day: number; for_day: number }[]> =>
  app.rows('SELECT * FROM outlook_day WHERE person_id = (SELECT max(id) FROM person) ORDER BY day');

describe('the outlook', () => {
  it('says that there are too few answers, and how many it takes', async () => {
    const page = await (await app.candidate()).get('/outlook');
    expect(page.html.querySelector('h1')?.text).toBe('Too few answers yet');
    expect(page.words).toContain('You have met 0 questions.');
    expect(page.html.querySelector('svg.chart')).toBeNull();
    expect(await kept()).toEqual([]);
  });

  it('is a range in plain words, with a scale, the topics, and what would raise it', async () => {
    const visitor = await app.candidate();
    await answerAll(visitor, (page) => (isNumber(page) ? { value: '1' } : rightFields(page)));
    const page = await visitor.get('/outlook');
    expect(page.html.querySelector('h1')?.text).toBe('Will I pass?');
    expect(page.words).toMatch(/of people who answer like you, (about|more|fewer|at most) .* of 10 would pass/);
    expect(page.words).toMatch(/Between \d+ % and \d+ %\./);
    expect(page.html.querySelectorAll('.side table tbody tr')).toHaveLength(2);
    expect(page.words).toContain('It promises nothing.');
    const [row] = await kept();
    expect(row?.low).toBeLessThan(row?.high ?? 0);
  });

  it('is better for somebody who is right than for somebody who is wrong', async () => {
    const good = await app.candidate();
    await answerAll(good, (page) => rightFields(page));
    await good.get('/outlook');
    const [after] = await kept();
    const poor = await app.candidate();
    await answerAll(poor, (page) => (isNumber(page) ? { value: '1' } : wrongFields(page)));
    const shown = await poor.get('/outlook');
    expect(shown.words).toContain('Will I pass?');
    const [before] = await kept();
    expect(after?.low).toBeGreaterThan(before?.high ?? 1);
  });

  it('tells of the day of the exam when the plan is kept, and of today beside it; each day is kept', async () => {
    const visitor = await app.candidate();
    await answerAll(visitor, (page) => rightFields(page));
    await visitor.submit(await visitor.get('/plan'), '/plan', { exam: '2026-12-08', minutes: '10' });
    const page = await visitor.get('/outlook');
    expect(page.words).toContain('on Tue 8 Dec, if you keep to your plan');
    expect(page.words).toContain('If you sat it tomorrow:');
    app.clock.forward(86_400_000);
    const later = await visitor.get('/outlook');
    expect(later.words).toContain('Day by day');
    const rows = await kept();
    expect(rows.map(({ day }) => day)).toEqual([20782, 20783]); // days since 1970-01-01 to 25 and 26 November 2026
    expect(new Set(rows.map(({ for_day }) => for_day))).toEqual(new Set([20795]));
  });
});

describe('what would raise it most', () => {
  it('can be gone over at once: a round of that objective and nothing else, which then has nothing more for the day', async () => {
    const visitor = await app.candidate();
    await answerAll(visitor, (page) => (isNumber(page) ? { value: '1' } : wrongFields(page)));
    app.clock.forward(86_400_000);
    const page = await visitor.get('/outlook');
    const form = page.html.querySelector('form[action="/study/rounds"]');
    const fields = Object.fromEntries(
      (form?.querySelectorAll('input') ?? []).map((input) => [input.getAttribute('name') ?? '', input.getAttribute('value') ?? '']),
    );
    const objective = fields['objective']?.split('/')[1] ?? '';
    const started = await visitor.send('POST', '/study/rounds', fields);
    const round = started.location ?? '';
    let asked = 0;
    for (let question = await visitor.get(round); question.status === 200; question = await visitor.get(round)) {
      expect(question.words).toContain(objective);
      await answer(visitor, question, rightFields(question));
      asked += 1;
    }
    expect(asked).toBeGreaterThan(0);
    const again = await visitor.send('POST', '/study/rounds', { ...fields, round: randomUUID() });
    const end = await visitor.get((await visitor.get(again.location ?? '')).location ?? '');
    expect(end.words).toContain('Nothing left to ask here today');
  });

  it.each(['AA-01', 'small/AA-01/x', "small/'", 'x'.repeat(200)])('refuses the objective %j', async (objective) => {
    const visitor = await app.candidate();
    const page = await visitor.get('/');
    const _csrf = page.html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    expect((await visitor.send('POST', '/study/rounds', { _csrf, round: randomUUID(), objective })).status).toBe(400);
  });
});

describe('a chance in words', () => {
  it.each([
    [0.68, 0.91, 'about 7 to 9 of 10'],
    [0.71, 0.72, 'about 7 of 10'],
    [0, 0.02, 'fewer than 1 of 10'],
    [0.02, 0.31, 'at most 3 of 10'],
    [0.7, 0.99, 'about 7 to 9 of 10'],
    // Nothing is told as certain: simulated learners who were promised so much passed less often.
    [0.99, 0.999, 'about 8 to 9 of 10'],
    [1, 1, 'about 8 to 9 of 10'],
  ])('of %d to %d is %j', (low, high, words) => {
    expect(tenths({ low, high })).toBe(words);
  });
});
