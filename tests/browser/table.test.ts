import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { testApp, type TestApp } from '../support/app.js';
import { staffOf } from '../support/staff.js';
import { chromiumPath, device, launch, listen } from './device.js';
import { faultsOf } from './faults.js';
import { signIn } from './tutor.js';

/** A table of answers as a file: the form, what is wrong with it, and the figures, as they are drawn. */

const data = (name: string): string => new URL(`../data/item-analysis/${name}`, import.meta.url).pathname;

describe.skipIf(chromiumPath === undefined)('a table of answers', { timeout: 300_000 }, () => {
  let app: TestApp;
  let browser: Browser;
  let address: string;
  beforeAll(async () => {
    app = await testApp();
    await staffOf(app);
    [browser, address] = await Promise.all([launch(), listen(app)]);
  });
  afterAll(async () => {
    await browser?.close();
    await app?.close();
  });

  it('is found from the first page, sent as files, and read by all eyes', async () => {
    const { page, context, complaints } = await device(browser, address);
    await signIn(page);
    await page.getByRole('link', { name: 'Analyse a table of answers' }).click();
    const faults = await faultsOf(page, 'form');
    await page.setInputFiles('#file', data('edge12-raw.csv'));
    await page.getByRole('button', { name: 'Work out the figures' }).click();
    expect(await page.locator('.findings').innerText()).toContain('give the key as well');
    // What was sent as a file has become text that can be mended.
    expect(await page.locator('#answers').inputValue()).toContain('C01,A,A,A,D');
    faults.push(...(await faultsOf(page, 'fault')));
    await page.setInputFiles('#keyFile', data('edge12-key.csv'));
    await page.getByRole('button', { name: 'Work out the figures' }).click();
    expect(await page.locator('h1').innerText()).toBe('2 of 8 questions to look at');
    await page.locator('summary').click();
    faults.push(...(await faultsOf(page, 'figures')));
    expect(faults).toEqual([]);
    expect(complaints.filter((words) => !words.includes('422'))).toEqual([]);
    await context.close();
  });
});
