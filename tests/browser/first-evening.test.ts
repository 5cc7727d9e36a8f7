import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { testApp, type TestApp } from '../support/app.js';
import { chromiumPath, laptop, launch, phone, watched } from './browser.js';

const stem = (page: Page): Promise<string> => page.locator('h1').innerText();

/** Reads the right answer of the small pack off the page, as its own rules say. */
async function answerRightly(page: Page, certainty = 'sure'): Promise<void> {
  const text = (await stem(page)).replace(/\s+/g, ' ');
  const current = Number(/takes (\d+) A/.exec(text)?.[1]);
  if ((await page.locator('input[name=value]').count()) > 0) await page.fill('input[name=value]', `${current * 230} W`);
  else if (text.includes('Stem of')) await page.locator('label.opt', { hasText: 'Key of' }).click();
  else await page.locator(`input[name=option][value="${[3, 5, 10, 13].find((fuse) => fuse >= current)}"]`).check({ force: true });
  await page.click(`button[name=certainty][value=${certainty}]`);
}

describe.skipIf(chromiumPath === undefined)('the first evening in a browser', { timeout: 300_000 }, () => {
  let app: TestApp;
  let browser: Browser;
  let origin: string;
  beforeAll(async () => {
    app = await testApp({ start: '2026-11-25T19:00:00Z' });
    origin = await app.server.listen({ port: 0, host: '127.0.0.1' });
    browser = await launch();
  });
  afterAll(async () => {
    await browser.close();
    await app.close();
  });

  const open = (options: Parameters<Browser['newContext']>[0] = {}): Promise<BrowserContext> =>
    browser.newContext({ viewport: phone, ...options });

  async function comeIn(page: Page, name: string): Promise<string[]> {
    await page.goto(origin);
    await page.fill('input[name=name]', name);
    await page.click('button.go');
    return await page.locator('.slip li').allInnerTexts();
  }

  it.each([
    ['with JavaScript', true],
    ['without JavaScript', false],
  ])('leads at phone width from the address to the end of a round, %s', async (_name, javaScriptEnabled) => {
    const context = await open({ javaScriptEnabled });
    const { page, elsewhere, complaints } = await watched(context, origin);
    const words = await comeIn(page, 'Odo Brackle');
    expect(words).toHaveLength(7);
    await page.click('a.go');
    await page.click('button[name=minutes][value="20"]');
    let asked = 0;
    while (page.url().match(/\/study\/rounds\/[^/]+$/)) {
      await answerRightly(page);
      expect(await page.locator('h1').innerText()).toMatch(/^Right/);
      await page.click('a.go');
      asked += 1;
    }
    expect(asked).toBe(8); // six fixed questions and two families
    expect(await page.locator('tbody tr').count()).toBe(8);
    await page.goto(origin);
    // Those of objectives with more weight are wanted surer, and come back sooner.
    const coming = (await page.locator('.coming').innerText()).matchAll(/(\d+) questions come back/g);
    expect([...coming].reduce((sum, [, count]) => sum + Number(count), 0)).toBe(8);
    expect(elsewhere).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it('meets Back with neither another question’s choice nor a warning of the browser', async () => {
    const context = await open();
    const page = await context.newPage();
    await comeIn(page, 'Gladys');
    await page.click('a.go');
    await page.click('button[name=minutes][value="20"]');
    while ((await page.locator('input[name=option]').count()) === 0) {
      await answerRightly(page);
      await page.click('a.go');
    }
    // Handed in without a choice: the page comes back, and can be fetched again.
    await page.click('button[value=sure]');
    expect(await page.locator('#fault').innerText()).toBe('Not handed in yet.');
    await page.goto(`${origin}/calculators`);
    await page.goBack();
    expect(await page.locator('#fault').innerText()).toBe('Not handed in yet.');
    await page.reload();
    await page.locator('label.opt').nth(1).click();
    await page.click('button[value=sure]');
    expect(page.url()).toContain('/study/answers/');
    await page.goBack();
    expect(await page.locator('form[action="/study/answer"]').count()).toBe(1);
    expect(await page.locator('input:checked').count()).toBe(0);
    await context.close();
  });

  it('says while one types what it understood, and asks again about what is ambiguous, keeping it', async () => {
    const context = await open();
    const page = await context.newPage();
    await comeIn(page, 'Tansy');
    await page.click('a.go');
    await page.click('button[name=minutes][value="20"]');
    while ((await page.locator('input[name=value]').count()) === 0) {
      await answerRightly(page);
      await page.click('a.go');
    }
    await page.fill('input[name=value]', '0.5 kW');
    await page.locator('[data-read-as]', { hasText: '500' }).waitFor();
    await page.fill('input[name=value]', '1,234');
    await page.click('button[value=sure]');
    expect(await page.locator('input[name=value]').inputValue()).toBe('1,234');
    expect(await page.locator('main').innerText()).toContain('Not handed in yet');
    await context.close();
  });

  it('can be done with the keyboard alone, and Enter in the box for a number never stands for "sure"', async () => {
    const context = await open({ viewport: laptop });
    const page = await context.newPage();
    await page.goto(origin);
    await page.focus('input[name=name]');
    await page.keyboard.type('Juniper');
    await page.keyboard.press('Enter');
    await page.locator('a.go').focus();
    await page.keyboard.press('Enter');
    await page.locator('button[value="20"]').focus();
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/study\/rounds\//);
    for (let i = 0; i < 10 && (await page.locator('input[name=value]').count()) === 0; i += 1) {
      await page.locator('input[name=option]').first().focus();
      await page.keyboard.press('ArrowDown');
      await page.keyboard.press('Tab');
      expect(await page.evaluate(() => document.activeElement?.getAttribute('value'))).toBe('sure');
      await page.keyboard.press('Tab');
      await page.keyboard.press('Enter');
      await page.waitForURL(/\/study\/answers\//);
      await page.locator('a.go').focus();
      await page.keyboard.press('Enter');
      await page.waitForURL(/\/study\/rounds\//);
    }
    await page.focus('input[name=value]');
    await page.keyboard.type('100 W');
    await page.keyboard.press('Enter');
    await page.locator('text=Say how sure you are').first().waitFor();
    const [row] = await app.rows<{ n: number }>("SELECT count(*)::int AS n FROM answer WHERE given = '100 W'");
    expect(row?.n).toBe(0);
    await context.close();
  });

  it('the next day asks what is due, also on another device that comes back by the phrase', async () => {
    app.clock.set('2026-11-25T19:00:00Z');
    const context = await open();
    const page = await context.newPage();
    const words = await comeIn(page, 'Zelda');
    await page.click('a.go');
    await page.click('button[name=minutes][value="0"]');
    const first = await stem(page);
    await answerRightly(page, 'guessing');
    await context.close();

    app.clock.set('2026-11-26T08:00:00Z');
    const tablet = await open({ viewport: laptop });
    const other = await tablet.newPage();
    await other.goto(`${origin}/return`);
    await other.fill('[name=phrase]', words.join(', ').toUpperCase());
    await other.click('form button');
    await other.waitForURL(`${origin}/`);
    expect(await stem(other)).toBe('One question has come back');
    await other.click('button[name=minutes][value="0"]');
    // A family comes back with other numbers: the words around them are the same.
    const plain = (text: string): string => text.replace(/[\d\s]+/g, '');
    expect(plain(await stem(other))).toBe(plain(first));
    await tablet.close();
    app.clock.set('2026-11-25T19:00:00Z');
  });

  it('prints a question without its buttons', async () => {
    const context = await open({ viewport: laptop });
    const page = await context.newPage();
    await comeIn(page, 'Mungo');
    await page.click('a.go');
    await page.click('button[name=minutes][value="5"]');
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('button[name=certainty]').first().isVisible()).toBe(false);
    expect(await page.locator('h1').isVisible()).toBe(true);
    expect((await page.pdf({ format: 'A4' })).length).toBeGreaterThan(5000);
    await context.close();
  });
});
