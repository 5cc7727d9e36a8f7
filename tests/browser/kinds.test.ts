import { mkdir } from 'node:fs/promises';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { FixedKind } from '../../src/core/questions/schema.js';
import { testApp, type TestApp } from '../support/app.js';
import { sampleOf, twoShapes } from '../support/kind-samples.js';
import { smallPack } from '../support/small-pack.js';
import { comeIn, fillParts, goOn, handIn } from './candidate.js';
import { chromiumPath, device, launch, listen, phone } from './device.js';
import { faultsOf } from './faults.js';

/** Each kind of question in parts, done as people do them: with a finger, with the keyboard alone, without scripts, on paper. */

const kinds = ['several', 'order', 'pairs', 'place'] as const satisfies FixedKind[];
type PartKind = (typeof kinds)[number];
const screens = process.env['RUNGWISE_KIND_SCREENS'];

/** The number under which an answer stands in the list above the pairs, which is what one types or chooses. */
const numberOf = async (page: Page, text: string): Promise<number> =>
  (await page.locator('fieldset > ol > li').allTextContents()).findIndex((each) => each.trim() === text) + 1;

describe.skipIf(chromiumPath === undefined)('questions in parts', () => {
  let app: TestApp;
  let browser: Browser;
  let address: string;
  beforeAll(async () => {
    const pack = smallPack();
    app = await testApp({ pack: { ...pack, questions: kinds.map(sampleOf), families: [], drawings: [twoShapes] } });
    [browser, address] = await Promise.all([launch(), listen(app)]);
    if (screens !== undefined) await mkdir(screens, { recursive: true });
  });
  afterAll(async () => {
    await browser?.close();
    await app?.close();
  });

  const picture = async (page: Page, name: string): Promise<void> => {
    if (screens !== undefined) await page.screenshot({ path: `${screens}/${name}.png`, fullPage: true });
  };

  /** Comes in, starts a round, and does each question with `way` until all four kinds were met. */
  async function eachKind(page: Page, way: (kind: PartKind) => Promise<void>): Promise<string[]> {
    await comeIn(page, 'Oona');
    await page.click('a.go');
    await page.click('button[name=minutes][value="20"]');
    const verdicts: string[] = [];
    for (let count = 0; count < kinds.length; count += 1) {
      const stem = await page.locator('h1').innerText();
      const kind = kinds.find((each) => sampleOf(each).stem === stem);
      if (kind === undefined) throw new Error(`What is ${stem}?`);
      await way(kind);
      await page.waitForURL(/\/study\/answers\//);
      verdicts.push(`${kind}: ${await page.locator('h1 .word').innerText()}`);
      await picture(page, `outcome-${kind}`);
      await goOn(page);
    }
    return verdicts.sort();
  }

  const allRight = ['order: Right.', 'pairs: Right.', 'place: Right.', 'several: Right.'];
  const row = (page: Page, text: string) => page.locator('.parts li', { hasText: text });
  const units = { Voltage: 'volt', Current: 'ampere', 'Potential difference': 'volt' };
  const steps = ['Read the maker’s instructions', 'Open the window', 'Take off your watch', 'Connect the charger'];

  it('can be done with a finger on a phone: marks on the drawing are touched, steps are moved with buttons', async () => {
    const { page, context, complaints } = await device(browser, address, { hasTouch: true });
    const verdicts = await eachKind(page, async (kind) => {
      await picture(page, `asked-${kind}`);
      if (kind === 'several')
        for (const number of ['Two', 'Three', 'Four', 'Five'])
          await row(page, `${number} is`)
            .getByText(['Two', 'Four'].includes(number) ? 'True' : 'False', { exact: true })
            .tap();
      if (kind === 'pairs')
        for (const [left, right] of Object.entries(units)) await page.getByLabel(left).selectOption({ index: await numberOf(page, right) });
      if (kind === 'place') await page.locator('label.mark', { hasText: 'B' }).tap();
      if (kind === 'order') {
        // One after the other to the top, the last step first.
        for (const step of [...steps].reverse()) for (let up = 0; up < 3; up += 1) await row(page, step).getByText('Sooner').tap();
        expect(await page.locator('.parts label').allInnerTexts()).toEqual(steps);
        expect(await page.locator('[role=status]').innerText()).toMatch(/^Step [A-D] is in place 1 of 4\.$/);
      }
      await handIn(page, 'Sure');
    });
    expect(verdicts).toEqual(allRight);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it('can be done without scripts', async () => {
    const { page, context } = await device(browser, address, { javaScriptEnabled: false });
    const verdicts = await eachKind(page, async (kind) => {
      await picture(page, `plain-${kind}`);
      if (kind === 'several')
        for (const number of ['Two', 'Three', 'Four', 'Five'])
          await row(page, `${number} is`)
            .getByText(['Two', 'Four'].includes(number) ? 'True' : 'False', { exact: true })
            .click();
      if (kind === 'pairs')
        for (const [left, right] of Object.entries(units)) await page.getByLabel(left).selectOption({ index: await numberOf(page, right) });
      if (kind === 'place') await page.locator('label.mark', { hasText: 'B' }).click();
      if (kind === 'order') for (const [index, step] of steps.entries()) await page.getByLabel(step).selectOption(String(index + 1));
      await handIn(page, 'Sure');
    });
    expect(verdicts).toEqual(allRight);
    await context.close();
  });

  it('can be done with the keyboard alone, in the order of the page', async () => {
    const { page, context } = await device(browser, address, { viewport: { width: 1280, height: 800 } });
    const focused = () => page.evaluate(() => document.activeElement?.closest('li')?.textContent ?? '');
    const tab = () => page.keyboard.press('Tab');
    const verdicts = await eachKind(page, async (kind) => {
      await page.locator('#options').evaluate((list) => list.querySelector<HTMLElement>('input, button, select')?.focus());
      if (kind === 'several')
        for (let count = 0; count < 4; count += 1) {
          const even = /Two|Four/.test(await focused());
          await page.keyboard.press('Space');
          if (!even) await page.keyboard.press('ArrowRight');
          await tab();
        }
      if (kind === 'pairs')
        for (let count = 0; count < 3; count += 1) {
          const text = await focused();
          await page.keyboard.type(String(await numberOf(page, text.includes('Current') ? 'ampere' : 'volt')));
          await tab();
        }
      if (kind === 'place') {
        await page.keyboard.press('Space');
        await page.keyboard.press('ArrowDown');
        await tab();
      }
      if (kind === 'order') {
        for (const step of [...steps].reverse()) {
          await row(page, step).getByText('Sooner').focus();
          for (let up = 0; up < 3; up += 1) await page.keyboard.press('Enter');
          // The focus stays on the button that was pressed, so that it can be pressed again.
          expect(await focused()).toContain(step);
        }
        while (!(await focused()).includes(steps[3] as string)) await tab();
        await tab();
        await tab();
      }
      expect(await page.evaluate(() => document.activeElement?.getAttribute('value'))).toBe('sure');
      await page.keyboard.press('Enter');
    });
    expect(verdicts).toEqual(allRight);
    await context.close();
  });

  it('fit a phone and a desk, by light and dark, before and after the answer', async () => {
    const { page, context } = await device(browser, address);
    // Every rule of axe at two widths, twice, keeps the browser busy for seconds.
    context.setDefaultTimeout(30_000);
    const faults: string[] = [];
    await eachKind(page, async (kind) => {
      faults.push(...(await faultsOf(page, kind)));
      await page.emulateMedia({ colorScheme: 'dark' });
      await picture(page, `dark-${kind}`);
      await page.emulateMedia({ media: 'print', colorScheme: 'light' });
      await page.setViewportSize({ width: 700, height: 900 });
      await picture(page, `print-${kind}`);
      await page.emulateMedia({ media: 'screen' });
      await page.setViewportSize(phone);
      await fillParts(page);
      if (kind === 'place') await page.locator('label.opt').first().click();
      await handIn(page, 'Sure');
      await page.waitForURL(/\/study\/answers\//);
      faults.push(...(await faultsOf(page, `${kind}, answered`)));
      await picture(page, `wrong-${kind}`);
    });
    expect(faults).toEqual([]);
    await context.close();
  }, 300_000);
});
