import { mkdtemp, readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { dayNumber } from '../../src/core/calendar.js';
import { testApp, type TestApp } from '../support/app.js';
import { addMember, gave, knows, makeClass } from '../support/classes.js';
import { withBlueprint } from '../support/papers.js';
import { staffOf } from '../support/staff.js';
import { comeIn } from './candidate.js';
import { chromiumPath, device, launch, listen, type Device } from './device.js';
import { faultsOf } from './faults.js';
import { tutorsDevice } from './tutor.js';

/** A tutor on a Thursday: the three questions, each on one page within two presses of signing in; printed; with keys; without scripts. */

const codes = ['AA-01-001', 'AA-02-001', 'BB-01-001', 'BB-02-001', 'CC-01-001', 'CC-02-001', 'nf-twice', 'nf-fuse'];

describe.skipIf(chromiumPath === undefined)('a tutor on a Thursday', { timeout: 300_000 }, () => {
  let app: TestApp;
  let browser: Browser;
  let address: string;
  beforeAll(async () => {
    app = await testApp();
    await withBlueprint(app);
    await staffOf(app);
    const id = await makeClass(app, 'Thursday beginners', 'Tessa', { paper: 'small/six', examOn: '2026-12-08' });
    const today = dayNumber(Date.parse('2026-11-25T18:00:00Z'), 'Europe/London');
    for (let place = 0; place < 12; place += 1) {
      const member = await addMember(app, id, `Member ${place}`, { seenAt: place < 3 ? '2026-11-10T10:00:00Z' : '2026-11-24T10:00:00Z' });
      for (const [index, code] of codes.entries())
        await knows(app, member, { code, stability: 1 + place * index, lastDay: today - 5, surelyWrong: place === 1 && index === 2 });
      await gave(app, member, { code: 'nf-twice', given: '0.02', right: place > 6, ...(place > 6 ? {} : { tellTale: 'divided' }) });
    }
    [browser, address] = await Promise.all([launch(), listen(app)]);
  });
  afterAll(async () => {
    await browser?.close();
    await app?.close();
  });

  const signedIn = (options: Parameters<typeof device>[2] = {}): Promise<Device> => tutorsDevice(browser, address, options);

  it.each([true, false])('comes from signing in to each answer with one press, scripts: %s', async (javaScriptEnabled) => {
    const { page, context } = await signedIn({ javaScriptEnabled });
    for (const [link, heading] of [
      ['Who needs help', 'Who needs help'],
      ['What to teach next', 'What to teach next'],
      ['Which question is bad', 'Which question is bad'],
    ] as const) {
      await page.goto('/');
      await page.getByRole('link', { name: link }).click();
      expect(await page.locator('h1').innerText()).toContain(heading);
    }
    await context.close();
  });

  it('reads every page with all eyes, on a phone and on a desk, in light and dark', async () => {
    const { page, context, complaints } = await signedIn();
    const faults = await faultsOf(page, 'classes');
    await page.goto('/');
    await page.getByRole('link', { name: 'Who needs help' }).click();
    faults.push(...(await faultsOf(page, 'grid')));
    await page.locator('.classgrid tbody td a').first().click();
    faults.push(...(await faultsOf(page, 'cell')));
    for (const [tab, name] of [
      ['What to teach', 'plan'],
      ['Which question is bad', 'questions'],
      ['Report', 'report'],
    ] as const) {
      await page.getByRole('navigation', { name: 'This class' }).getByRole('link', { name: tab }).click();
      faults.push(...(await faultsOf(page, name)));
    }
    await page.goto('/club');
    faults.push(...(await faultsOf(page, 'club')));
    expect(faults).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it('opens a cell and sorts by a topic with keys alone', async () => {
    const { page, context } = await signedIn();
    await page.goto('/');
    await page.getByRole('link', { name: 'Who needs help' }).focus();
    await page.keyboard.press('Enter');
    await page.waitForURL(/classes\/\d+$/);
    await page.locator('.classgrid thead a', { hasText: 'BB' }).focus();
    await page.keyboard.press('Enter');
    await page.waitForURL(/order=BB/);
    await page.locator('.classgrid tbody td a').nth(1).focus();
    await page.keyboard.press('Enter');
    await page.waitForURL(/members\/\d+\/topics\/BB$/);
    expect(await page.locator('h1').innerText()).toContain('Topic BB');
    await context.close();
  });

  /** Pages of a PDF, counted by its page objects. */
  async function pagesOf(page: Page): Promise<number> {
    const path = join(await mkdtemp(join(tmpdir(), 'rungwise-print-')), 'page.pdf');
    await page.pdf({ path, preferCSSPageSize: true });
    return [...(await readFile(path, 'latin1')).matchAll(/\/Type\s*\/Page\b/g)].length;
  }

  it('prints the grid of twelve on one sheet, and the session plan with its cautions on one', async () => {
    const { page, context } = await signedIn();
    await page.goto('/');
    await page.getByRole('link', { name: 'Who needs help' }).click();
    expect(await pagesOf(page)).toBe(1);
    await page.getByRole('navigation', { name: 'This class' }).getByRole('link', { name: 'What to teach' }).click();
    expect(await pagesOf(page)).toBe(1);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.caution').first().isVisible()).toBe(true);
    expect(await page.locator('.tabs').isVisible()).toBe(false);
    await context.close();
  });

  it('lets a candidate read and print a report of their own', async () => {
    const { page, context, complaints } = await device(browser, address);
    await comeIn(page, 'Wren');
    await page.goto('/progress');
    await page.getByRole('link', { name: 'Report to print' }).click();
    expect(await page.locator('h1').innerText()).toContain('where I stand');
    expect(await faultsOf(page, 'own report')).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
