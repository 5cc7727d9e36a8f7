import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { run } from '../../src/cli/analyse.js';
import { testApp, type Shown, type TestApp, type Visitor } from '../support/app.js';
import { lsat6 } from '../support/item-analysis.js';
import { staffOf } from '../support/staff.js';

/** The page that takes a table of answers: the same figures as the command, in plain words. */

const data = (name: string): string => new URL(`../data/item-analysis/${name}`, import.meta.url).pathname;
const text = (name: string): string => readFileSync(data(name), 'utf8');

let app: TestApp;
let tutor: Visitor;
beforeAll(async () => {
  app = await testApp();
  ({ tutor } = await staffOf(app));
});
afterAll(() => app.close());

const send = async (fields: { answers?: string; key?: string }): Promise<Shown> =>
  tutor.submit(await tutor.get('/analyse'), '/analyse', fields);
const edge = () => send({ answers: text('edge12-raw.csv'), key: text('edge12-key.csv') });
const rowsOf = (page: Shown, caption: string): string[][] =>
  page.html
    .querySelectorAll('table')
    .filter((table) => table.querySelector('caption')?.text === caption)
    .flatMap((table) =>
      table
        .querySelectorAll('tbody tr')
        .map((row) => row.querySelectorAll('th, td').map((cell) => cell.text.trim().replace(/\u202f/g, ' '))),
    );

describe('a table of answers', () => {
  it('shows which questions to look at and why, with what to do', async () => {
    const page = await edge();
    expect(page.status).toBe(200);
    expect(page.html.querySelector('h1')?.text).toBe('2 of 8 questions to look at');
    expect(page.html.querySelectorAll('h3').map(({ text: id }) => id)).toEqual(['q2', 'q4']);
    expect(page.words).toContain('Fewer are right than by guessing: 0 of 12');
    expect(page.words).toContain('Check the key first.');
    expect(page.words).toContain('D is chosen by those who know more: 6 of 12');
    expect(page.words).toContain('Too few answers to tell: q1, q3, q5, q6, q7 and q8.');
    expect(page.words).toContain('With fewer than 30 candidates, go by the intervals');
    expect(page.words).toContain('KR-20: 0.47 (−0.14 to 0.82)');
    expect(page.words).toContain('Standard error: 1.2 marks');
  });

  it('shows the figures that the command prints', async () => {
    const page = await edge();
    const rows = rowsOf(page, 'Figures of each question');
    // expected.json, rounded: r = -0.677 (-0.901 to -0.169), 0.483, -0.55, 0.770.
    expect(rows[3]).toEqual(['q4', '6 of 12', '25 % to 75 %', '−0.68 (−0.90 to −0.17)', '−0.48', '−0.55', '0.77', 'look']);
    const out: string[] = [];
    await run([data('edge12-raw.csv'), '--key', data('edge12-key.csv')], { out: (line) => void out.push(line), err: () => undefined });
    for (const [id, right, limits, rest] of rows) {
      const line = out[0]?.split('\n').find((each) => each.startsWith(`${id} `)) ?? '';
      for (const part of [right, limits, ...(rest ?? '').replace(/[()]/g, '').split(/ (?=\S+ to)/)]) expect(line).toContain(part);
    }
    // expected.json: C 0.440, A and D -0.153, the blank -0.378.
    expect(page.html.querySelectorAll('#chosen dd')[6]?.text).toBe('A: 1 (−0.15), B: 0, C (key): 9 (0.44), D: 1 (−0.15), blank: 1 (−0.38)');
  });

  it('shows counts alone, and no KR-20, for fewer than ten', async () => {
    const page = await send({ answers: text('flat4-raw.csv'), key: text('flat4-key.csv') });
    expect(page.html.querySelector('h1')?.text).toBe('Too few answers to tell');
    expect(page.words).toContain('Too few to tell: 4 candidates, and it takes 10.');
    expect(rowsOf(page, 'Figures of each question')[0]).toEqual(['q1', '2 of 4', '15 % to 85 %', 'too few']);
    expect(page.words).not.toMatch(/KR-20:|Standard error|−1\.00/);
  });

  it('is taken as a file of 0 and 1, as large as a club’s', async () => {
    const { questions, rows } = lsat6();
    const csv = `candidate;${questions.map(({ id }) => id).join(';')}\r\n${rows.map((row) => `;${row.join(';')}\r\n`).join('')}`;
    const page = await tutor.sendFile(await tutor.get('/analyse'), '/analyse', 'lsat6.csv', Buffer.from(`\uFEFF${csv}`));
    expect(page.status).toBe(200);
    // expected.json: KR-20 0.294997 (0.2235 to 0.3618), SEM 0.869; Q3 553 of 1000, item-rest 0.1728 (0.112 to 0.232), D 0.794.
    expect(page.words).toContain('KR-20: 0.29 (0.22 to 0.36)');
    expect(page.words).toContain('Standard error: 0.9 marks');
    expect(rowsOf(page, 'Figures of each question')[2]).toEqual([
      'Q3',
      '553 of 1000',
      '52 % to 58 %',
      '0.17 (0.11 to 0.23)',
      '0.62',
      '0.79, very good',
      '0.22',
      '',
    ]);
    expect(page.words).toContain('Q1: Easy: 924 of 1000 are right.');
  });

  it('leaves nothing behind', async () => {
    const counts = () =>
      app.rows(
        `SELECT (SELECT count(*) FROM answer) AS answers, (SELECT count(*) FROM sitting) AS sittings, (SELECT count(*) FROM person) AS people`,
      );
    const before = await counts();
    await edge();
    expect(await counts()).toEqual(before);
    expect((await tutor.get('/analyse')).words).not.toContain('C01');
  });

  it('comes back with every fault and its line, and what was typed', async () => {
    const answers = 'candidate,q1\nOdo,A\nTansy,E\nOdo,B';
    const page = await send({ answers, key: 'item,key,options\nq1,A,A B' });
    expect(page.status).toBe(422);
    expect(page.html.querySelectorAll('.findings li').map((item) => item.text.replace(/\s+/g, ' '))).toEqual([
      'The answers, line 3 “q1” has “E”; its options are A B.',
      'The answers, line 4 “Odo” is in line 2 already: each candidate has one row.',
    ]);
    expect(page.html.querySelector('#answers')?.text).toBe(answers);
    expect(page.html.querySelector('#answers')?.getAttribute('aria-invalid')).toBe('true');
    expect(page.html.querySelector('#key')?.hasAttribute('aria-invalid')).toBe(false);
  });

  it.each([
    ['nothing', '', 'The first row names the columns'],
    ['a header alone', 'candidate,q1', 'There is a header and no row below it.'],
    ['letters without a key', 'candidate,q1\nOdo,A', 'give the key as well'],
    ['an open quotation mark', 'candidate,q1\n"Odo,1', 'A quotation mark is opened and never closed.'],
  ])('that is %s is refused in words', async (_what, answers, words) => {
    const page = await send({ answers });
    expect([page.status, page.words]).toEqual([422, expect.stringContaining(words)]);
  });

  it('that is too large is refused, and does not come back', async () => {
    const large = `candidate,q1\n${',1\n'.repeat(90_000)}`;
    const page = await tutor.sendFile(await tutor.get('/analyse'), '/analyse', 'large.csv', Buffer.from(large));
    expect([page.status, page.words]).toEqual([422, expect.stringContaining('256 kB is the most')]);
    expect(page.html.querySelector('#answers')?.text).toBe('');
    const huge = await tutor.sendFile(await tutor.get('/analyse'), '/analyse', 'huge.csv', Buffer.alloc(3 * 2 ** 20, 'a'));
    expect(huge.status).toBe(413);
  });

  it('of a hostile sort is shown as text', async () => {
    const page = await send({ answers: 'candidate,<b>x</b>,"=1+1"\n<i>,1,0\n' });
    expect(page.html.querySelectorAll('main i, main td b')).toEqual([]);
    expect(page.words).toContain('<b>x</b>');
  });

  it('is not for candidates, nor for visitors', async () => {
    const candidate = await app.candidate('Odo');
    expect([(await candidate.get('/analyse')).status, (await app.visitor().get('/analyse')).status]).toEqual([403, 401]);
  });
});
