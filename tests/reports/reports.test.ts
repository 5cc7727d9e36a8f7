import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { dayNumber } from '../../src/core/calendar.js';
import { testApp, type TestApp, type Visitor } from '../support/app.js';
import { addMember, gave, knows, makeClass } from '../support/classes.js';
import { withBlueprint } from '../support/papers.js';
import { staffOf } from '../support/staff.js';

/** What is taken away: a class as a sheet and as a table, and a candidate's own report. */

let app: TestApp;
let tutor: Visitor;
let id: number;
const today = dayNumber(Date.parse('2026-11-25T18:00:00Z'), 'Europe/London');
/** OWASP's list of what starts a formula, and what RFC 4180 wants quoted. */
const hostile = ['=1+1', '@SUM(A1)', '-3+4', '+44 7', 'a "quoted" name', 'comma, and; more', '\u0009tab'];

beforeAll(async () => {
  app = await testApp();
  await withBlueprint(app);
  ({ tutor } = await staffOf(app));
  id = await makeClass(app, 'Thursday beginners', 'Tessa', { paper: 'small/six' });
  for (const name of hostile.slice(0, -1)) await addMember(app, id, name);
  const odo = await addMember(app, id, 'Odo', { seenAt: '2026-11-24T10:00:00Z' });
  for (const code of ['AA-01-001', 'AA-02-001', 'nf-twice']) {
    await knows(app, odo, { code, stability: 10, lastDay: today - 10 });
    await gave(app, odo, { code, given: '0', right: code !== 'nf-twice' });
  }
});
afterAll(() => app.close());

describe('the table of a class', () => {
  it('is RFC 4180, one line a candidate, and gives back every name', async () => {
    const sent = await tutor.get(`/classes/${id}/results.csv`);
    expect(sent.headers['content-type']).toBe('text/csv; charset=utf-8; header=present');
    expect(sent.headers['content-disposition']).toBe('attachment; filename="class.csv"');
    const rows = parse(sent.text, { columns: true, record_delimiter: '\r\n' }) as Record<string, string>[];
    expect(rows).toHaveLength(hostile.length);
    const names = rows.map((row) => row['candidate'] ?? '');
    // A spreadsheet runs a cell that begins with one of these; an apostrophe makes it text.
    expect(names.filter((name) => /^[=+\-@\t\r]/.test(name))).toEqual([]);
    expect(names).toEqual(expect.arrayContaining(["'=1+1", "'@SUM(A1)", "'-3+4", "'+44 7", 'a "quoted" name', 'comma, and; more', 'Odo']));
  });

  it('holds what the grid shows, as shares and whole numbers', async () => {
    const rows = parse((await tutor.get(`/classes/${id}/results.csv`)).text, { columns: true }) as Record<string, string>[];
    const odo = rows.find((row) => row['candidate'] === 'Odo') ?? {};
    expect(odo).toMatchObject({
      answers: '3',
      questions_met: '3',
      questions: '8',
      first_answers_right: '2',
      last_here: '2026-11-24',
      sure_and_wrong: '0',
    });
    // Three of eight questions are too few for an outlook.
    expect([odo['outlook_low'], odo['outlook_high']]).toEqual(['', '']);
    // After as many days as its stability a memory is recalled with 0.9, by the meaning of stability.
    expect([odo['AA_recall'], odo['AA_met'], odo['AA_questions']]).toEqual(['0.900', '3', '3']);
  });

  it('of an empty class is its heading alone', async () => {
    const empty = await makeClass(app, 'Empty', 'Tessa');
    const text = (await tutor.get(`/classes/${empty}/results.csv`)).text;
    expect(text.split('\r\n').filter((line) => line !== '')).toHaveLength(1);
  });
});

describe('the report of a class', () => {
  it('lists candidates with outlook, answers and when they were last here', async () => {
    const page = await tutor.get(`/classes/${id}/report`);
    const row = page.html.querySelectorAll('tbody tr').find(({ text }) => text.startsWith('Odo'));
    expect(row?.querySelectorAll('td').map(({ text }) => text)).toEqual(['too little known', '3 answers', '2 of 3', 'yesterday', '–', '0']);
  });
});

describe('a candidate’s own report', () => {
  it('stands on one page, also before the first answer', async () => {
    const wren = await app.candidate('Wren');
    const page = await wren.get('/report');
    expect(page.status).toBe(200);
    expect(page.words).toContain('Wren: where I stand');
    expect(page.words).toContain('No answers yet.');
    expect(page.words).toContain('no certificate');
  });
});
