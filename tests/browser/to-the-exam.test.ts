import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { replayAll } from '../../src/study/index.js';
import { testApp, type TestApp } from '../support/app.js';
import { chromiumPath, device, launch, listen, wordsOf } from './device.js';
import { comeIn, goOn, isQuestion } from './candidate.js';

/** A candidate on a telephone from the first day to the day of the exam and after it, the clock moved on from day to day. */

const paper = { id: 'four', title: 'Four questions', questions: 4, passMark: 3, minutes: 5, shares: { AA: 2, BB: 2 } };
const day = 86_400_000;

describe.skipIf(chromiumPath === undefined)('from the first day to the exam in a browser', { timeout: 300_000 }, () => {
  let app: TestApp;
  let browser: Browser;
  let address: string;
  beforeAll(async () => {
    app = await testApp({ start: '2026-11-25T19:00:00Z' });
    await app.rows('UPDATE pack SET blueprints = $1', [JSON.stringify([paper])]);
    [browser, address] = await Promise.all([launch(), listen(app)]);
  });
  afterAll(async () => {
    await browser?.close();
    await app?.close();
  });

  /** Answers all of a round of five minutes by the small pack's own rules. @returns how many were asked */
  async function study(page: Page): Promise<number> {
    await page.goto('/');
    const five = page.locator('button[name=minutes][value="5"]');
    if ((await five.count()) === 0) return 0;
    await five.click();
    let asked = 0;
    for (; await isQuestion(page); asked += 1) {
      const current = Number(/takes (\d+) A/.exec(await wordsOf(page, 'h1'))?.[1]);
      if ((await page.locator('#answer').count()) > 0) await page.fill('#answer', `${current * 230} W`);
      else if (Number.isNaN(current)) await page.locator('label.opt', { hasText: 'Key of' }).click();
      else await page.locator(`input[name=option][value="${[3, 5, 10, 13].find((fuse) => fuse >= current)}"]`).check({ force: true });
      await page.click('button[name=certainty][value=fairly]');
      expect(await wordsOf(page, 'h1')).toMatch(/^Right/);
      await goOn(page);
    }
    return asked;
  }

  it('asks by the plan, tells the outlook and the progress, calms on the day, and keeps safe afterwards', async () => {
    const { page, context, complaints } = await device(browser, address);
    await comeIn(page, 'Odo Brackle');
    await page.goto('/plan');
    await page.fill('#exam', '2026-12-05');
    await page.getByLabel('Sunday').check();
    await page.getByRole('button', { name: 'Save the plan' }).click();
    expect(await wordsOf(page, 'h1')).toBe('10 days to the exam');

    const asked: number[] = [];
    for (let left = 10; left > 0; left -= 1, app.clock.forward(day)) asked.push(await study(page));
    expect(asked[0]).toBeGreaterThan(0);
    // Sunday 29 November is a day off: nothing new is brought, though whoever comes may study.
    const met = await app.rows<{ day: number }>('SELECT DISTINCT day FROM answer WHERE stability_before IS NULL');
    expect(met.map((row) => row.day)).not.toContain(Date.UTC(2026, 10, 29) / day);
    const [unmet] = await app.rows<{ n: number }>('SELECT count(*)::int AS n FROM memory WHERE reps = 0');
    expect(unmet?.n).toBe(0);

    expect(app.clock.now().toISOString()).toBe('2026-12-05T19:00:00.000Z');
    await page.goto('/plan');
    expect(await wordsOf(page, 'h1')).toBe('Today is the exam');
    await page.goto('/outlook');
    expect(await wordsOf(page, '.lead')).toMatch(/of people who answer like you, .* of 10 would pass/);
    await page.goto('/progress');
    expect(await wordsOf(page, 'h1')).toBe('6 of 6 rungs firm');

    for (let months = 0; months < 11; months += 1) {
      app.clock.forward(30 * day);
      await page.goto('/plan');
      expect(await wordsOf(page, 'h1')).toBe('After the exam');
    }
    // What is kept safe are the objectives of the greatest weight: half of this pack.
    expect(await study(page)).toBeGreaterThan(0);
    const safe = await app.rows<{ weight: number }>(
      `SELECT DISTINCT o.weight FROM answer a JOIN question q ON q.id = a.question_id JOIN objective o ON o.id = q.objective_id WHERE a.day > $1`,
      [Date.UTC(2026, 11, 5) / day],
    );
    expect(safe).toEqual([{ weight: 3 }]);
    expect((await replayAll(app.db, () => undefined)).differences).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
