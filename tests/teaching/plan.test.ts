import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { dayNumber } from '../../src/core/calendar.js';
import { testApp, type TestApp, type Visitor } from '../support/app.js';
import { addMember, gave, knows, makeClass } from '../support/classes.js';
import { withBlueprint } from '../support/papers.js';
import { staffOf } from '../support/staff.js';

/** The session plan: what is taught again, the mistakes behind it by count, and the questions to open with. */

let app: TestApp;
let tutor: Visitor;
let id: number;
const today = dayNumber(Date.parse('2026-11-25T18:00:00Z'), 'Europe/London');
const codes = ['AA-01-001', 'AA-02-001', 'BB-01-001', 'BB-02-001', 'CC-01-001', 'CC-02-001', 'nf-twice', 'nf-fuse'];

beforeAll(async () => {
  app = await testApp();
  await withBlueprint(app);
  ({ tutor } = await staffOf(app));
  id = await makeClass(app, 'Thursday beginners', 'Tessa', { paper: 'small/six' });
  await app.rows('UPDATE study_class SET meets_on = 4, meets_at = $2 WHERE id = $1', [id, '19:30']);
  for (let place = 0; place < 12; place += 1) {
    const member = await addMember(app, id, `Member ${place}`);
    // All is firm but the family of powers: 7 of 12 divide, and three of those are sure of it.
    for (const code of codes) await knows(app, member, { code, stability: code === 'nf-twice' ? 0.5 : 3000, lastDay: today - 5 });
    const divides = place < 7;
    await gave(app, member, {
      code: 'nf-twice',
      given: '0.02',
      right: !divides,
      certainty: place < 3 ? 'sure' : 'fairly',
      ...(divides ? { tellTale: 'divided' } : {}),
    });
    // First wrong, then right: only what was answered last counts.
    await gave(app, member, { code: 'AA-01-001', given: '1', right: false, at: '2026-11-23T19:00:00Z' });
    await gave(app, member, { code: 'AA-01-001', given: '0', right: true, at: '2026-11-24T19:00:00Z', first: false });
  }
});
afterAll(() => app.close());

const plain = (text: string): string => text.replace(/\s+/g, ' ').trim();

describe('the session plan', () => {
  it('names the next meeting, and puts the objective first that loses most marks', async () => {
    const page = await tutor.get(`/classes/${id}/plan`);
    expect(plain(page.html.querySelector('h1')?.text ?? '')).toBe('What to teach on Thursday');
    expect(page.words).toContain('Thursday 26 November 2026, 19:30');
    expect(page.html.querySelectorAll('.plan > li h2').map(({ text }) => plain(text))[0]).toBe('Objective AA-01');
  });

  it('counts the misconception behind it by people, with how many of them were sure', async () => {
    const page = await tutor.get(`/classes/${id}/plan`);
    const [first] = page.html.querySelectorAll('.plan > li');
    expect(plain(first?.text ?? '')).toContain('7 of 12: Divided instead of multiplied, 3 of them sure.');
    expect(first?.text).not.toContain('Wrong one of AA-01-001');
  });

  it('opens with questions of what is taught, and hands them to the class evening', async () => {
    const page = await tutor.get(`/classes/${id}/plan`);
    const opener = page.html.querySelectorAll('.side ol li').map(({ text }) => plain(text));
    expect(opener[0]).toMatch(/7 had it wrong last time$/);
    expect(opener.length).toBeLessThanOrEqual(6);
    const [{ ids }] = (await app.rows<{ ids: number[] }>(`SELECT array_agg(id) AS ids FROM question WHERE code = ANY ($1)`, [codes])) as [
      { ids: number[] },
    ];
    const href = page.html.querySelector('.btn.go')?.getAttribute('href') ?? '';
    const wanted = new URL(href, 'http://here').searchParams.get('questions')?.split(',').map(Number) ?? [];
    expect(wanted).toHaveLength(opener.length);
    expect(wanted.every((question) => ids.includes(question))).toBe(true);
  });

  it('prints the cautions of what is taught', async () => {
    const page = await tutor.get(`/classes/${id}/plan`);
    const cautions = page.html.querySelectorAll('.caution').map(({ text }) => plain(text));
    expect(cautions.length).toBeGreaterThan(0);
    expect(new Set(cautions).size).toBe(cautions.length);
  });

  it('goes on when the pack changes in the middle of the course', async () => {
    await app.rows(`UPDATE question SET retired = true WHERE code = 'nf-twice'`);
    // What is known of the catalogue is kept a minute.
    app.clock.forward(61_000);
    const page = await tutor.get(`/classes/${id}/plan`);
    expect(page.status).toBe(200);
    expect(page.words).not.toContain('Divided instead of multiplied');
    expect((await tutor.get(`/classes/${id}`)).status).toBe(200);
    await app.rows(`UPDATE question SET retired = false WHERE code = 'nf-twice'`);
    app.clock.forward(61_000);
    expect((await tutor.get(`/classes/${id}/plan`)).words).toContain('Divided instead of multiplied');
  });
});
