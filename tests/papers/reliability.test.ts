import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { testApp, type Shown, type TestApp, type Visitor } from '../support/app.js';
import { beginPaper, choose, rightLetter, sixPaper, withBlueprint } from '../support/papers.js';
import { staffOf } from '../support/staff.js';

/** How far the marks of a class paper can be relied on, on the page of the paper. */

let app: TestApp;
let tutor: Visitor;
let address: string;
beforeAll(async () => {
  app = await testApp({ start: '2026-11-25T19:00:00Z' });
  ({ tutor } = await staffOf(app));
  await withBlueprint(app, { ...sixPaper, passMark: 2 });
  await app.rows(`WITH made AS (INSERT INTO study_class (name) VALUES ('Thursday beginners') RETURNING id)
    INSERT INTO class_tutor (class_id, person_id) SELECT made.id, person.id FROM made, person WHERE person.role = 'tutor'`);
  const page = await tutor.get('/class-papers');
  const own = page.html.querySelector('select[name=class] option')?.getAttribute('value') ?? '';
  const window = { opens: '2026-11-25T18:30', closes: '2026-11-25T21:00' };
  const fields = { class: own, paper: 'small/six', title: 'Winter paper', region: 'uk', versions: '3', screen: 'on', ...window };
  address = (await tutor.submit(page, '/class-papers', fields)).location ?? '';
});
afterAll(() => app.close());

/** The questions in the order of the pack, so that they are the same ones in every version. */
async function handIn(name: string, right: number): Promise<void> {
  const visitor = await app.candidate(name);
  await app.rows(`INSERT INTO class_member (class_id, person_id) SELECT (SELECT max(id) FROM study_class), max(id) FROM person`);
  const taken = await visitor.get('/papers');
  const sitting =
    (await visitor.submit(taken, taken.html.querySelector('form[action$="/sit"]')?.getAttribute('action') ?? '')).location ?? '';
  await beginPaper(visitor, sitting);
  const asked = await app.rows<{ position: number }>(
    `SELECT i.position FROM sitting s JOIN paper_item i ON i.paper_id = s.paper_id AND i.version = s.version WHERE s.id = $1 ORDER BY i.question_id`,
    [sitting.split('/').at(-1)],
  );
  for (const { position } of asked.slice(0, right))
    await choose(visitor, sitting, position, rightLetter(await visitor.get(`${sitting}/${position}`), position));
  await visitor.submit(await visitor.get(`${sitting}/hand-in`), `${sitting}/hand-in`);
}

const reliability = (page: Shown): string | undefined => page.html.querySelector('#reliability')?.text.replace(/\s+/g, ' ').trim();

describe('the page of a class paper', () => {
  it('says nothing of reliability before anybody has handed in', async () => {
    expect(reliability(await tutor.get(address))).toBeUndefined();
  });

  it('says that nine are too few, and gives KR-20 with its interval and the error in marks from ten on', async () => {
    // Six questions: the first three right, two, one, one, none; the last three blank.
    const marks = [3, 2, 1, 1, 0, 3, 2, 1, 1, 0];
    for (const [index, right] of marks.slice(0, 9).entries()) await handIn(`Candidate ${index + 1}`, right);
    expect(reliability(await tutor.get(address))).toBe(
      'How far the marks can be relied on Too few to tell: 9 candidates, and it takes 10.',
    );
    await handIn('Candidate 10', marks[9] ?? 0);
    // Rights 8, 4, 2, 0, 0, 0: Σ r (n - r) = 56; n² variance = 10·30 - 14² = 104. KR-20 = 6/5 (1 - 56/104) = 0.554;
    // with F for 9 and 45 degrees of freedom (scipy) -0.076 to 0.872; SEM = √(104/90 · 0.446) = 0.718.
    const words = reliability(await tutor.get(address));
    expect(words).toContain('KR-20: 0.55 (−0.08 to 0.87)');
    expect(words).toContain('Standard error: 0.7 marks');
    expect(words).toContain('2 of 10 are within 0.7 marks of the pass mark, 2: ');
  });
});
