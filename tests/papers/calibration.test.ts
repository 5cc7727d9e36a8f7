import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { testApp, type TestApp, type Visitor } from '../support/app.js';
import { withBlueprint } from '../support/papers.js';
import { staffOf } from '../support/staff.js';

/** What was told before papers, held against how they went. */

let app: TestApp;
let administrator: Visitor;
let tutor: Visitor;
beforeAll(async () => {
  app = await testApp({ start: '2026-11-25T19:00:00Z' });
  ({ administrator, tutor } = await staffOf(app));
  await withBlueprint(app);
  await app.candidate('Odo');
});
afterAll(() => app.close());

/** A paper that was sat after this was told. */
async function sat(low: number | null, high: number | null, passed: boolean): Promise<void> {
  const id = randomUUID();
  await app.rows(
    `INSERT INTO paper (id, pack_id, pack_version, title, blueprint, region, seed, made_at, versions) SELECT $1, id, '1', 'P', '{}', 'uk', 1, now(), 1 FROM pack`,
    [id],
  );
  await app.rows(
    `INSERT INTO sitting (id, paper_id, version, person_id, way, handed_in_at, "right", passed, chance_low, chance_high)
     SELECT $1, $1, 1, max(id), 'screen', now(), 1, $2, $3, $4 FROM person`,
    [id, passed, low, high],
  );
}

describe('the page that holds the outlook against papers', () => {
  it('says that there are too few, and counts only those before which something was told', async () => {
    await sat(null, null, true);
    const page = await administrator.get('/class-papers/calibration');
    expect(page.words).toContain('No mock paper has been sat by somebody whom the outlook told something.');
    expect(page.html.querySelector('svg.chart')).toBeNull();
  });

  it('tells what was told and what happened, with the scores worked by hand', async () => {
    // Ten told 0.8, of whom 8 passed; ten told 0.3, of whom 2 passed.
    for (let each = 0; each < 10; each += 1) {
      await sat(0.75, 0.85, each < 8);
      await sat(0.25, 0.35, each < 2);
    }
    const page = await administrator.get('/class-papers/calibration');
    expect(page.words).toContain('Before 20 mock papers the outlook told 55 % on average, and 50 % passed: fewer than told, by 5 points.');
    // Brier: (8 x 0.04 + 2 x 0.64 + 2 x 0.49 + 8 x 0.09) / 20 = 0.165.
    expect(page.words).toContain('Brier score: 0.165.');
    // Log loss: -(8 ln 0.8 + 2 ln 0.2 + 2 ln 0.3 + 8 ln 0.7) / 20 = 0.513.
    expect(page.words).toContain('Log loss: 0.513.');
    // Of the 100 pairs of one who passed and one who did not, 8 x 8 stand in order, 8 x 2 and 2 x 8 are tied: 0.64 + 0.32 / 2 = 0.80.
    expect(page.words).toContain('Order: 0.80.');
    const rows = page.html.querySelectorAll('tbody tr').map((row) =>
      row
        .querySelectorAll('th, td')
        .slice(0, 3)
        .map(({ text }) => text),
    );
    expect(rows).toEqual([
      ['30 %', '10', '20 %'],
      ['80 %', '10', '80 %'],
    ]);
    expect(page.html.querySelector('svg.chart')).not.toBeNull();
  });

  it('shows a tutor those of their own classes only', async () => {
    expect((await tutor.get('/class-papers/calibration')).words).toContain('No mock paper has been sat');
  });
});
