import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { testApp, type TestApp, type Visitor } from '../support/app.js';
import { addMember, makeClass } from '../support/classes.js';
import { withBlueprint } from '../support/papers.js';
import { staffOf } from '../support/staff.js';

/** Two classes and three roles, on every page that tells how a class stands: nothing of one class is seen from another. */

let app: TestApp;
let tutor: Visitor;
let administrator: Visitor;
let candidate: Visitor;
let own: number;
let other: number;
let ownMember: number;
let otherMember: number;

beforeAll(async () => {
  app = await testApp();
  await withBlueprint(app);
  ({ tutor, administrator } = await staffOf(app));
  own = await makeClass(app, 'Thursday beginners', 'Tessa');
  other = await makeClass(app, 'Of another tutor', 'Alma');
  ownMember = await addMember(app, own, 'Odo');
  otherMember = await addMember(app, other, 'Secret Sedge');
  candidate = await app.candidate('Wren');
});
afterAll(() => app.close());

const pages = (classId: number | string, member: number | string): string[] =>
  ['', '/plan', '/report', '/results.csv', `/members/${member}/topics/AA`, '/questions', '/evenings', '/skills', '/people'].map(
    (path) => `/classes/${classId}${path}`,
  );

/** Without what differs from request to request. */
const masked = (text: string): string => text.replace(/[0-9a-f]{6}-[0-9a-z]+/g, 'reference').replace(/value="[^"]{20,}"/g, 'value="token"');

describe('the pages of a class', () => {
  it('open for its tutor and for an administrator', async () => {
    for (const url of pages(own, ownMember)) {
      expect((await tutor.get(url)).status, url).toBe(200);
      expect((await administrator.get(url)).status, url).toBe(200);
    }
  });

  it('of another tutor answer, to the byte, as those of a class that does not exist', async () => {
    const [theirs, none] = [pages(other, otherMember), pages(987_654, 987_654)];
    for (const [index, url] of theirs.entries()) {
      const [a, b] = [await tutor.get(url), await tutor.get(none[index] ?? '')];
      expect([a.status, b.status], url).toEqual([404, 404]);
      expect(masked(a.text).replaceAll(url, 'url'), url).toBe(masked(b.text).replaceAll(none[index] ?? '', 'url'));
    }
  });

  it('do not open a member of another class under one’s own', async () => {
    const url = `/classes/${own}/members/${otherMember}/topics/AA`;
    expect((await tutor.get(url)).status).toBe(404);
  });

  it('are for no candidate and no visitor', async () => {
    for (const url of pages(own, ownMember)) {
      expect((await candidate.get(url)).status, url).toBe(403);
      expect((await app.visitor('10.9.9.9').get(url)).status, url).toBe(401);
    }
  });

  it('show no name of another class on the pages over all', async () => {
    for (const url of ['/', '/club']) expect((await tutor.get(url)).text, url).not.toMatch(/Secret|Of another tutor/);
    expect((await administrator.get('/club')).text).toContain('Of another tutor');
  });
});

describe('everybody as a group', () => {
  it('is told of from five people on', async () => {
    const figures = async (): Promise<string[]> =>
      (await tutor.get('/club')).html
        .querySelectorAll('tbody tr')
        .at(-1)
        ?.querySelectorAll('td [aria-hidden]')
        .map(({ text }) => text) ?? [];
    const asked = async (name: string): Promise<void> => {
      const person = await addMember(app, own, name);
      await app.rows('UPDATE memory SET stability = 10, difficulty = 5, last_day = 20000, due_day = 20010, reps = 1 WHERE person_id = $1', [
        person,
      ]);
    };
    for (const name of ['Alba', 'Bede', 'Cleo', 'Dora']) await asked(name);
    expect(new Set(await figures())).toEqual(new Set(['–']));
    await asked('Ezra');
    // What all know is worked out once a day.
    expect(new Set(await figures())).toEqual(new Set(['–']));
    app.clock.set('2026-11-26T05:30:00Z');
    expect((await figures()).some((figure) => /^\d+$/.test(figure))).toBe(true);
  });
});
