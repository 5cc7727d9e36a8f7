import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { calculations } from '../../shared/safety-maths/index.js';
import { readPackFolder } from '../../src/packs/index.js';
import { projectFolder } from '../../src/platform/project-folder.js';
import { testApp, type TestApp } from '../support/app.js';
import { exampleAddress } from '../support/calculator-examples.js';
import { chromiumPath, desk, device, launch, listen, phone, tooWide, wordsOf } from './device.js';
import { faultsOf } from './faults.js';

/** The calculators as people use them: on a phone and a desk, with and without scripts, by keys alone, on paper. */

const writes = process.env['RUNGWISE_WRITE_SCREENS'] === 'yes';
const screens = join(projectFolder, 'tests', 'browser', 'screens');
const paged = calculations.filter(({ foundBy }) => foundBy.length > 0).map(({ id }) => id);

describe.skipIf(chromiumPath === undefined)('the calculators', () => {
  let app: TestApp;
  let browser: Browser;
  let address: string;
  beforeAll(async () => {
    const { pack } = await readPackFolder(join(projectFolder, 'question-packs', 'entry-safety'), { tryFamilies: false });
    if (pack === null) throw new Error('The shipped pack has errors.');
    app = await testApp({ pack });
    [browser, address] = await Promise.all([launch(), listen(app)]);
    if (writes) await mkdir(screens, { recursive: true });
  });
  afterAll(async () => {
    await browser?.close();
    await app?.close();
  });

  it('fit a phone, every one, empty and with an answer', async () => {
    const { page, context, complaints } = await device(browser, address, { javaScriptEnabled: true });
    const faults: string[] = [];
    for (const path of paged.flatMap((id): string[] => [`/calculators/${id}`, exampleAddress(id) ?? `/calculators/${id}`])) {
      await page.goto(path);
      const excess = await tooWide(page);
      if (excess > 0) faults.push(`${path}: ${excess} px too wide`);
    }
    expect(faults).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  }, 300_000);

  it('are free of what axe finds: the list, what was found, empty, worked, with a fault, and a question to try', async () => {
    const { page, context } = await device(browser, address);
    const faults: string[] = [];
    for (const path of [
      '/calculators',
      '/calculators?q=ladder',
      '/calculators/ladder-base',
      '/calculators/ladder-base?height=4.8+m',
      '/calculators/ladder-base?height=4.8+kg',
      '/calculators/extension-lead-load?loads=2000&loads=990',
      '/calculators/dc-voltage-drop?length_one_way=3&resistance=0.0033&current=20',
      '/calculators/allowed-noise-time?level=94',
      '/calculators/ladder-base/try/nf-ladder-base?seed=7&form=typed&region=uk&value=20',
      '/calculators/ladder-base/try/nf-ladder-base?seed=7&form=options&region=uk',
    ]) {
      await page.goto(path);
      faults.push(...(await faultsOf(page, path)));
    }
    expect(faults).toEqual([]);
    await context.close();
  }, 300_000);

  it('work without scripts: found by plain words, filled in, sent by the Enter key, and the address holds it all', async () => {
    const { page, context } = await device(browser, address, { javaScriptEnabled: false });
    await page.goto('/calculators');
    await page.locator('#q').fill('how far out do the ladder’s feet go');
    await page.locator('#q').press('Enter');
    await page.locator('.calcs a').first().click();
    expect(new URL(page.url()).pathname).toBe('/calculators/ladder-base');
    await page.locator('#in-height').fill('4,8 m');
    await page.locator('#in-height').press('Enter');
    // One out for every four up: 4.8 m / 4.
    expect(await wordsOf(page, '.big-answer')).toBe('1.2 m');
    expect(new URL(page.url()).searchParams.get('height')).toBe('4,8 m');
    expect(await page.locator('#in-height').inputValue()).toBe('4,8 m');
    expect(await page.locator('#drawing svg').count()).toBe(1);
    await page.locator('#in-height').fill('lots');
    await page.getByRole('button', { name: 'Work it out' }).click();
    expect(await page.locator('#in-height').inputValue()).toBe('lots');
    expect(await page.locator('#in-height-why').innerText()).not.toBe('');
    await context.close();
  }, 300_000);

  it('follow the keys with scripts: the result and the address change, the focus stays', async () => {
    const { page, context, complaints } = await device(browser, address);
    await page.goto('/calculators/ladder-base');
    await page.locator('#in-height').focus();
    await page.keyboard.type('4.8');
    await page.locator('.big-answer').waitFor();
    expect(await wordsOf(page, '.big-answer')).toBe('1.2 m');
    expect(new URL(page.url()).searchParams.get('height')).toBe('4.8');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('in-height');
    await page.locator('[data-read-as]').first().filter({ hasText: /4\.8/ }).waitFor();
    await page.keyboard.type(' kg');
    await page.locator('.big-answer').waitFor({ state: 'detached' });
    expect(await page.locator('#in-height').inputValue()).toBe('4.8 kg');
    await page.reload();
    expect(await page.locator('#in-height').inputValue()).toBe('4.8 kg');
    // The one complaint is the browser's note that the page with a fault came as 422.
    expect(complaints.filter((text) => !text.includes('422'))).toEqual([]);
    await context.close();
  }, 300_000);

  it('print the answer, the working, the caution and the source, and no buttons', async () => {
    const { page, context } = await device(browser, address);
    await page.setViewportSize(desk);
    await page.goto('/calculators/ladder-base?height=4.8');
    if (writes) await page.screenshot({ path: join(screens, 'calculator.png') });
    await page.emulateMedia({ media: 'print' });
    for (const part of ['.big-answer', 'ol.working', '.plate.warn', '.titleblock', '#drawing svg'])
      expect([part, await page.locator(part).first().isVisible()]).toEqual([part, true]);
    expect(await page.locator('button:visible, nav:visible').count()).toBe(0);
    await page.setViewportSize(phone);
    await context.close();
  }, 300_000);

  it('lead from a question to try, marked there, to the same numbers in the calculator', async () => {
    const { page, context } = await device(browser, address);
    await page.goto('/calculators/ladder-base');
    await page.getByRole('link', { name: /^Try one/ }).click();
    const height = Number(/([\d.]+)\sm\b/.exec(await page.locator('h1').innerText())?.[1]);
    await page.locator('#answer').fill(String(height / 4));
    await page.locator('#answer').press('Enter');
    expect(await wordsOf(page, '.plate.yes .word')).toBe('Right.');
    await page.locator('.formula ~ p a').click();
    expect(await page.locator('#in-height').inputValue()).toBe(String(height));
    expect(Number.parseFloat(await wordsOf(page, '.big-answer'))).toBeCloseTo(height / 4, 2);
    await context.close();
  }, 300_000);
});
