import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { dayNumber } from '../../src/core/calendar.js';
import { memoryModel } from '../../src/core/memory.js';
import { testApp, type Shown, type TestApp, type Visitor } from '../support/app.js';
import { addMember, gave, knows, makeClass } from '../support/classes.js';
import { withBlueprint } from '../support/papers.js';
import { staffOf } from '../support/staff.js';

/** The class grid: what each cell says, in what order candidates stand, and what is said where there is little to say. */

let app: TestApp;
let tutor: Visitor;
const today = dayNumber(Date.parse('2026-11-25T18:00:00Z'), 'Europe/London');

beforeAll(async () => {
  app = await testApp();
  await withBlueprint(app);
  ({ tutor } = await staffOf(app));
});
afterAll(() => app.close());

const words = (page: Shown): string[][] =>
  page.html
    .querySelectorAll('.classgrid tbody tr')
    .map((row) => row.querySelectorAll('th, td').map((cell) => (cell.querySelector('.vh') ?? cell).text.replace(/\s+/g, ' ').trim()));
const names = (page: Shown): string[] =>
  page.html.querySelectorAll('.classgrid tbody th').map((head) => head.childNodes[0]?.text.trim() ?? '');

describe('a class of no, one, two and five people', () => {
  it('of nobody says what to do, and has no table', async () => {
    const id = await makeClass(app, 'Empty', 'Tessa');
    const page = await tutor.get(`/classes/${id}`);
    expect(page.status).toBe(200);
    expect(page.words).toContain('Nobody is in this class yet.');
    expect(page.html.querySelector('.classgrid')).toBeNull();
    for (const path of ['plan', 'report']) expect((await tutor.get(`/classes/${id}/${path}`)).status, path).toBe(200);
  });

  it.each([1, 2, 5])('of %i who never answered shows dashes, no outlook, and plans nothing', async (count) => {
    const id = await makeClass(app, `Class of ${count}`, 'Tessa');
    for (let place = 0; place < count; place += 1) await addMember(app, id, `Member ${place}`);
    const page = await tutor.get(`/classes/${id}`);
    expect(words(page)).toHaveLength(count);
    for (const row of words(page)) {
      expect(row[1]).toBe('too little known');
      expect(row.slice(2).every((cell) => /not asked yet, 0 of \d+ questions asked$/.test(cell))).toBe(true);
    }
    expect(page.words).toContain('Too few answers to tell yet.');
    expect((await tutor.get(`/classes/${id}/plan`)).words).toContain('Too few answers to tell.');
  });
});

describe('the figures of a cell', () => {
  it('of what was asked are the chance to recall by the model, today and on the day of the exam', async () => {
    const id = await makeClass(app, 'Recall', 'Tessa', { examOn: '2026-12-05' });
    const odo = await addMember(app, id, 'Odo');
    // After as many days as its stability a memory is recalled with 0.9, by the meaning of stability.
    for (const code of ['AA-01-001', 'AA-02-001', 'nf-twice']) await knows(app, odo, { code, stability: 10, lastDay: today - 10 });
    const page = await tutor.get(`/classes/${id}?of=asked`);
    const cell = words(page)[0]?.[2] ?? '';
    expect(cell).toMatch(/^Odo, .*: 90 per cent, 3 of \d questions asked$/);
    // Twenty days after the last answer, ten from today: by ts-fsrs.
    const later = Math.round(memoryModel().recall({ stability: 10, difficulty: 5, lastDay: today - 10 }, today + 10) * 100);
    expect(words(await tutor.get(`/classes/${id}?of=asked&on=exam`))[0]?.[2]).toContain(`: ${later} per cent`);
    expect(later).toBeLessThan(90);
  });

  it('of one or two questions of more are not told', async () => {
    const id = await makeClass(app, 'Few', 'Tessa');
    const wren = await addMember(app, id, 'Wren');
    await knows(app, wren, { code: 'AA-01-001', stability: 400, lastDay: today });
    expect(words(await tutor.get(`/classes/${id}`))[0]?.[2]).toMatch(/too few questions to tell, 1 of \d questions asked$/);
  });

  it('of questions that are retired, or not asked where somebody lives, do not count', async () => {
    const id = await makeClass(app, 'Regions', 'Tessa');
    await addMember(app, id, 'Uma');
    const na = await addMember(app, id, 'Noel');
    await app.rows(`UPDATE person SET region = 'na' WHERE id = $1`, [na]);
    const page = await tutor.get(`/classes/${id}?order=name`);
    const totals = words(page).map((row) => row.slice(2).map((cell) => Number(/of (\d+) questions/.exec(cell)?.[1])));
    const all = totals.map((each) => each.reduce((sum, count) => sum + count, 0));
    const [noel, uma] = all as [number, number];
    const [{ uk, na: inNa }] = (await app.rows<{ uk: number; na: number }>(
      `SELECT count(*) FILTER (WHERE 'uk' = ANY (regions))::int AS uk, count(*) FILTER (WHERE 'na' = ANY (regions))::int AS na FROM question WHERE NOT retired`,
    )) as [{ uk: number; na: number }];
    expect([noel, uma]).toEqual([inNa, uk]);
  });
});

describe('everybody right and everybody wrong', () => {
  it.each([
    ['everything firm', 36_000, /: (99|100) per cent/],
    ['nothing recalled', 0.001, /: (\d|1\d) per cent/],
  ])('with %s the cells say so', async (name, stability, pattern) => {
    const id = await makeClass(app, name, 'Tessa');
    const codes = (await app.rows<{ code: string }>('SELECT code FROM question WHERE NOT retired')).map(({ code }) => code);
    for (const person of ['One', 'Two']) {
      const member = await addMember(app, id, person);
      for (const code of codes) await knows(app, member, { code, stability, lastDay: today - 300 });
    }
    const page = await tutor.get(`/classes/${id}?of=asked`);
    for (const row of words(page)) {
      expect(row[1]).not.toBe('too little known');
      const told = row.slice(2).filter((cell) => !cell.includes('too few'));
      expect(told.length).toBeGreaterThan(0);
      for (const cell of told) expect(cell).toMatch(pattern);
    }
    expect((await tutor.get(`/classes/${id}/plan`)).status).toBe(200);
  });
});

describe('the order of the candidates', () => {
  it('is by need, by name, by absence or by a topic', async () => {
    const id = await makeClass(app, 'Order', 'Tessa');
    const seen = { Alba: '2026-11-24T10:00:00Z', Bede: '2026-11-10T10:00:00Z', Cleo: '2026-11-25T10:00:00Z' };
    const ids = new Map<string, number>();
    for (const [name, seenAt] of Object.entries(seen)) ids.set(name, await addMember(app, id, name, { seenAt }));
    for (const [name, stability] of [
      ['Alba', 500],
      ['Bede', 100],
      ['Cleo', 5],
    ] as const)
      for (const code of ['AA-01-001', 'AA-02-001', 'nf-twice'])
        await knows(app, ids.get(name) ?? 0, { code, stability, lastDay: today - 5 });
    expect(names(await tutor.get(`/classes/${id}?order=name`))).toEqual(['Alba', 'Bede', 'Cleo']);
    expect(names(await tutor.get(`/classes/${id}?order=seen`))).toEqual(['Bede', 'Alba', 'Cleo']);
    expect(names(await tutor.get(`/classes/${id}?order=AA&of=asked`))).toEqual(['Cleo', 'Bede', 'Alba']);
    const page = await tutor.get(`/classes/${id}`);
    expect(page.words).toContain('last here 15 days ago');
    const away = page.html.querySelectorAll('.side section').find((part) => part.text.includes('Not here for a week'));
    expect(away?.querySelectorAll('li').map((line) => line.text.trim())).toEqual(['Bede: 15 days ago']);
  });

  it('is the usual one for an order that there is not', async () => {
    const id = await makeClass(app, 'Odd', 'Tessa');
    await addMember(app, id, 'Alba');
    expect((await tutor.get(`/classes/${id}?order=drop+table&on=never&of=x`)).status).toBe(200);
  });
});

describe('a cell opened', () => {
  it('shows the answers behind the figure, what was said and how sure, and what was never asked', async () => {
    const id = await makeClass(app, 'Open', 'Tessa');
    const odo = await addMember(app, id, 'Odo');
    await knows(app, odo, { code: 'AA-01-001', stability: 10, lastDay: today - 10, surelyWrong: true });
    await gave(app, odo, { code: 'AA-01-001', given: '2', right: false, certainty: 'sure' });
    const href = (await tutor.get(`/classes/${id}`)).html.querySelector('.classgrid tbody td a')?.getAttribute('href') ?? '';
    const page = await tutor.get(href);
    expect(page.words).toContain('Odo: ');
    expect(page.words).toContain('not right: chose “Wrong two of AA-01-001”, sure');
    expect(page.words).toContain('90 %');
    expect(page.words).toContain('Sure, and wrong.');
    expect(page.html.querySelectorAll('details li').length).toBeGreaterThan(0);
  });
});

describe('a class without a paper, and one whose paper has gone', () => {
  it('is told by the usual paper, with what to do', async () => {
    const without = await tutor.get(`/classes/${await makeClass(app, 'Without', 'Tessa')}`);
    expect(without.words).toContain('No paper is chosen for this class yet. Until one is, figures are for “Six questions”.');
    const gone = await tutor.get(`/classes/${await makeClass(app, 'Gone', 'Tessa', { paper: 'small/that-was' })}`);
    expect(gone.words).toContain('No paper is chosen');
    const chosen = await tutor.get(`/classes/${await makeClass(app, 'Chosen', 'Tessa', { paper: 'small/six' })}`);
    expect(chosen.words).not.toContain('No paper is chosen');
  });
});
