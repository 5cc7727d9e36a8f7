import ICAL from 'ical.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readDate } from '../../src/core/date-text.js';
import { testApp, type Shown, type TestApp, type Visitor } from '../support/app.js';
import { answer, isNumber, rightFields, untilQuestion, wrongFields } from '../support/answering.js';

/** A candidate says when the exam is; the plan shows its days, and a calendar program reads them. The clock stands on Wednesday 25 November 2026. */

let app: TestApp;
beforeAll(async () => {
  app = await testApp({ start: '2026-11-25T19:00:00Z' });
});
afterAll(() => app.close());

const save = async (visitor: Visitor, fields: Record<string, string>): Promise<Shown> =>
  visitor.submit(await visitor.get('/plan'), '/plan', fields);

const rows = (page: Shown): string[][] =>
  page.html.querySelectorAll('tbody tr').map((row) => row.querySelectorAll('th, td').map((cell) => cell.text.trim()));

describe('the page of the plan', () => {
  it('tells a fortnight while no exam is known, and says so', async () => {
    const page = await (await app.candidate()).get('/plan');
    expect(page.words).toContain('No exam is set');
    expect(rows(page)).toHaveLength(14);
    expect(page.words).toContain('Save the plan first');
  });

  it('tells every day until the exam once it is known, in a chart and in a table', async () => {
    const visitor = await app.candidate();
    expect((await save(visitor, { exam: '2026-12-08', minutes: '10' })).location).toBe('/plan?saved=yes');
    const page = await visitor.get('/plan?saved=yes');
    expect(page.words).toContain('Saved.');
    expect(page.html.querySelector('h1')?.text).toBe('13 days to the exam');
    const days = rows(page);
    expect(days).toHaveLength(13);
    expect([days[0]?.[0], days.at(-1)?.[0]]).toEqual(['Wed 25 Nov', 'Mon 7 Dec']);
    // The small pack has eight questions; each is new once.
    expect(days.reduce((sum, [, fresh]) => sum + Number(fresh), 0)).toBe(8);
    expect(page.html.querySelectorAll('svg.chart rect').length).toBeGreaterThan(8);
  });

  it('asks nothing on days off', async () => {
    const visitor = await app.candidate();
    await save(visitor, { exam: '2026-12-08', minutes: '10', off: '0', daysOff: '27 Nov 2026\n2026-12-01' });
    const off = rows(await visitor.get('/plan')).filter(([, fresh]) => fresh === 'day off');
    expect(off.map(([day]) => day)).toEqual(['Fri 27 Nov', 'Sun 29 Nov', 'Tue 1 Dec', 'Sun 6 Dec']);
  });

  it.each([
    ['exam', '2026-11-24', 'That day is past.'],
    ['exam', '31.02.2027', 'This is no date.'],
    ['exam', '2031-01-01', 'more than two years away'],
    ['minutes', '0', '1 to 180 minutes'],
    ['minutes', '9999', 'whole number'],
    ['minutes', 'ten', 'whole number'],
    ['daysOff', '24 Dec 2026\nMaundy Thursday', '“Maundy Thursday” is no date'],
  ])('comes back with what was typed when %s is %j', async (field, typed, why) => {
    const visitor = await app.candidate();
    const page = await save(visitor, { exam: '2026-12-08', minutes: '10', [field]: typed });
    expect(page.status).toBe(422);
    expect(page.words).toContain(why);
    const box = page.html.querySelector(`#${field}`);
    expect(field === 'daysOff' ? box?.text : box?.getAttribute('value')).toBe(typed);
    expect(await app.rows('SELECT * FROM study_plan WHERE person_id = (SELECT max(id) FROM person)')).toEqual([]);
  });

  it('keeps an exam that has gone by, so that other things can still be changed', async () => {
    const visitor = await app.candidate();
    await save(visitor, { exam: '2026-12-08', minutes: '10' });
    await app.rows('UPDATE study_plan SET exam_day = exam_day - 30');
    expect((await save(visitor, { minutes: '15' })).status).toBe(303);
    expect((await visitor.get('/plan')).words).toContain('After the exam');
  });
});

describe('the calendar', () => {
  const calendarOf = async (visitor: Visitor): Promise<string> =>
    (await visitor.get('/plan')).html.querySelector('a[href*="/plan/calendar/"]')?.getAttribute('href') ?? '';

  it('is read by a calendar program that is not signed in, with a day for each day of study and the exam', async () => {
    const visitor = await app.candidate();
    await save(visitor, { exam: '2026-12-08', minutes: '10', off: '6' });
    const address = await calendarOf(visitor);
    const response = await app.visitor('10.9.9.9').get(address);
    expect(String(response.headers['content-type'])).toBe('text/calendar; charset=utf-8');
    // Read by another implementation of RFC 5545.
    const calendar = new ICAL.Component(ICAL.parse(response.text) as unknown[]);
    const events = calendar.getAllSubcomponents('vevent').map((component) => new ICAL.Event(component));
    expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
    expect(events.every(({ startDate }) => startDate.isDate)).toBe(true);
    const exam = events.find(({ summary }) => summary === 'Exam');
    expect([exam?.startDate.toString(), exam?.endDate.toString()]).toEqual(['2026-12-08', '2026-12-09']);
    const studies = events.filter(({ summary }) => summary.startsWith('Rungwise: '));
    expect(studies.length).toBeGreaterThan(5);
    expect(studies.some(({ startDate }) => startDate.dayOfWeek() === ICAL.Time.SATURDAY)).toBe(false);
    expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length);
    expect(response.text).not.toContain('Odo');
  });

  it('moves to a new address when its owner wants that; the old one then leads nowhere', async () => {
    const visitor = await app.candidate();
    await save(visitor, { exam: '2026-12-08', minutes: '10' });
    const before = await calendarOf(visitor);
    await visitor.submit(await visitor.get('/plan'), '/plan/calendar', {});
    const after = await calendarOf(visitor);
    expect(after).not.toBe(before);
    expect([(await visitor.get(before)).status, (await visitor.get(after)).status]).toEqual([404, 200]);
  });

  it('is not found by guessing', async () => {
    const visitor = await app.candidate();
    await save(visitor, { minutes: '10' });
    const address = await calendarOf(visitor);
    for (const wrong of [
      address.replace(/.{5}\.ics$/, 'AAAAA.ics'),
      address.replace(/calendar\/\d+/, 'calendar/1'),
      '/plan/calendar/x.ics',
    ])
      expect((await visitor.get(wrong)).status).toBe(wrong === address ? 200 : 404);
  });
});

describe('a date', () => {
  it.each([
    ['2026-12-24', '2026-12-24'],
    ['24 Dec 2026', '2026-12-24'],
    ['1st January 2027', '2027-01-01'],
    ['24.12.2026', '2026-12-24'],
  ])('%j is read as %s', (typed, iso) => {
    expect(readDate(typed)).toBe(Date.parse(iso) / 86_400_000);
  });

  it.each(['', '2026-13-01', '31 Feb 2027', '12/24/2026', 'tomorrow', '24 Dec'])('%j is none', (typed) => {
    expect(readDate(typed)).toBeNull();
  });
});

describe('Now, with an exam ahead', () => {
  it('says how much is for today, offers what is left of the day first, and tells the days to come', async () => {
    const visitor = await app.candidate();
    await save(visitor, { exam: '2026-12-08', minutes: '4', off: '4' });
    const now = await visitor.get('/');
    expect(now.html.querySelector('h1')?.text).toMatch(/questions for today$/);
    expect(now.words).toContain('13 days to the exam.');
    expect(now.html.querySelector('.lengths button')?.getAttribute('value')).toBe('4');
    // Thursdays are off.
    expect(now.html.querySelector('.coming li')?.text.replace(/\s+/g, ' ')).toContain('Thu 26 Nov');
    expect(now.html.querySelector('.coming li')?.text).toContain('Day off');
  });

  it('says when the day’s measure is done, and lets one go on', async () => {
    const visitor = await app.candidate();
    await save(visitor, { exam: '2026-12-08', minutes: '1' });
    const round = await visitor.round('1');
    for (let page = await visitor.get(round); page.status === 200; page = await visitor.get(round))
      await answer(visitor, page, isNumber(page) ? { value: '1' } : rightFields(page));
    const now = await visitor.get('/');
    expect(now.html.querySelector('h1')?.text).toBe('Done for today');
    expect(now.html.querySelectorAll('.lengths button').length).toBeGreaterThan(1);
  });
});

describe('a question that falls due on a day off', () => {
  it('is said to come back on the first day after it that is not off', async () => {
    const visitor = await app.candidate();
    // 26 November 2026, tomorrow, is a Thursday.
    await save(visitor, { minutes: '10', off: '4' });
    const page = await untilQuestion(visitor, await visitor.round('5'), (shown) => !isNumber(shown));
    const outcome = await answer(visitor, page, wrongFields(page));
    expect(outcome.words).toContain('This one comes back in 2 days.');
  });
});

describe('too few minutes', () => {
  it('are told with how many would do', async () => {
    const visitor = await app.candidate();
    await save(visitor, { exam: '2026-11-28', minutes: '1' });
    expect((await visitor.get('/plan')).words).toContain('With about 10 minutes a day you would meet them all.');
  });
});
