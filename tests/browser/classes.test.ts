import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { testApp, type TestApp } from '../support/app.js';
import { withBlueprint } from '../support/papers.js';
import { staffOf } from '../support/staff.js';
import { chromiumPath, device, launch, listen, wordsOf, type Device } from './device.js';
import { faultsOf } from './faults.js';
import { tutorsDevice } from './tutor.js';

/** A tutor makes a class and brings people in; candidates join it: with keys alone, without scripts, on a phone, on paper. */

describe.skipIf(chromiumPath === undefined)('a class and its people', { timeout: 300_000 }, () => {
  let app: TestApp;
  let browser: Browser;
  let address: string;
  beforeAll(async () => {
    app = await testApp();
    await staffOf(app);
    await withBlueprint(app);
    [browser, address] = await Promise.all([launch(), listen(app)]);
  });
  afterAll(async () => {
    await browser?.close();
    await app?.close();
  });

  const signedIn = (options: Parameters<typeof device>[2] = {}): Promise<Device> => tutorsDevice(browser, address, options);

  /** @returns the address of its page about people */
  async function makeClass(page: Page, name: string): Promise<string> {
    await page.goto('/classes/new');
    await page.fill('#name', name);
    await page.click('button.go');
    await page.waitForURL(/\/people\?said=made/);
    return new URL(page.url()).pathname;
  }

  const unfold = async (page: Page): Promise<void> => {
    for (const summary of await page.locator('summary').all()) await summary.click();
  };

  it('is made with the keyboard alone, and a form that comes back leads to the fault', async () => {
    const { page, complaints } = await signedIn();
    await page.goto('/classes/new');
    await page.focus('#name');
    await page.keyboard.type('Thursday beginners');
    await page.focus('#meetsOn');
    await page.keyboard.type('Thu');
    await page.focus('#meetsAt');
    await page.keyboard.type('evening');
    await page.keyboard.press('Enter');
    await page.locator('.plate.no:focus').waitFor();
    const faults = await faultsOf(page, 'class that comes back');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('meetsAt');
    await page.keyboard.press('Control+A');
    await page.keyboard.type('7:30 pm');
    await page.keyboard.press('Enter');
    await page.waitForURL(/said=made/);
    expect(await wordsOf(page, '.lead')).toContain('Thursdays, 19:30');
    faults.push(...(await faultsOf(page, 'new class')));
    expect(faults).toEqual([]);
    expect(complaints.filter((text) => !text.includes('422'))).toEqual([]);
  });

  it('is joined without scripts by a code that is typed, and every page on the way is for all eyes', async () => {
    const tutor = await signedIn();
    const people = await makeClass(tutor.page, 'Joined without scripts');
    await tutor.page.click('button[value=new]');
    await tutor.page.locator('p.code').waitFor();
    const faults = await faultsOf(tutor.page, 'people with a code');
    const code = await wordsOf(tutor.page, 'p.code');

    const { page } = await device(browser, address, { javaScriptEnabled: false });
    await page.goto('/join');
    await page.fill('#code', 'K7QW 3MX0');
    await page.click('button.go');
    expect(await wordsOf(page, '.plate.no')).toContain('is in no code');
    await page.fill('#code', ` ${code.toLowerCase().replace(' ', '-')} `);
    await page.click('button.go');
    expect(await wordsOf(page, 'h1')).toBe('Joined without scripts');
    await page.fill('#name', 'Zelda <b>');
    await page.click('button.go');
    expect(await page.locator('.slip li').count()).toBe(7);
    await page.goto('/my-classes');
    await page.click('summary');
    expect(await wordsOf(page, 'details')).toContain('Leave Joined without scripts');

    const eyes = await device(browser, address);
    for (const [path, name] of [
      ['/join', 'join'],
      ['/join/K7QW3MXQ', 'dead code'],
      [`/join/${code.replace(' ', '')}`, 'found'],
    ] as const) {
      await eyes.page.goto(path);
      faults.push(...(await faultsOf(eyes.page, name)));
    }
    // With scripts the browser tells its time zone.
    await eyes.page.fill('#name', 'Odo');
    await eyes.page.click('button.go');
    await eyes.page.waitForURL(/phrase/);
    await eyes.page.goto('/my-classes');
    await unfold(eyes.page);
    faults.push(...(await faultsOf(eyes.page, 'my classes')));
    await eyes.page.goto('/me');
    faults.push(...(await faultsOf(eyes.page, 'me in a class')));

    await tutor.page.goto(people);
    await tutor.page.click('text=Zelda <b>');
    await unfold(tutor.page);
    faults.push(...(await faultsOf(tutor.page, 'one candidate')));
    await tutor.page.goto(people);
    await unfold(tutor.page);
    faults.push(...(await faultsOf(tutor.page, 'people, all unfolded')));
    expect(faults).toEqual([]);
    for (const { requests } of [tutor, eyes]) expect([...new Set(requests.map(({ origin }) => origin))]).toEqual([address]);
  });

  it('prints slips that are whole: four on A4, nothing cut off, QR codes of 30 mm and more', async () => {
    const { page } = await signedIn();
    const people = await makeClass(page, 'A class whose name has sixty letters, which is all there may');
    await page.click('button[value=new]');
    await page.goto(people);
    // The widest names there can be, and more than a sheet of them.
    await page.fill(
      '#names',
      ['Odo', `${'M'.repeat(19)} ${'W'.repeat(20)}`, 'm'.repeat(40), 'Bartholomew Featherstonehaugh-Wobbly', 'Tansy', 'Wilf'].join('\n'),
    );
    await page.click('text=Add them and show the slips');
    await page.waitForURL(/\/slips$/);
    const faults = await faultsOf(page, 'slips');
    faults.push(...(await cutFaults(page)));
    await page.goto(people);
    faults.push(...(await faultsOf(page, 'people with the widest names')));
    await page.goto(`${people}/join-slips`);
    await page.selectOption('#copies', '8');
    await page.waitForURL(/copies=8/);
    expect(await page.locator('.cut').count()).toBe(8);
    faults.push(...(await faultsOf(page, 'joining slips')), ...(await cutFaults(page)));
    expect(faults).toEqual([]);
  });

  /** What is wrong with the slips on a page as they are printed: A4 less its margins is 180 mm wide. */
  async function cutFaults(page: Page): Promise<string[]> {
    const millimetre = 96 / 25.4;
    await page.setViewportSize({ width: Math.round(180 * millimetre), height: 1000 });
    await page.emulateMedia({ media: 'print' });
    const slips = await page.locator('.cut').evaluateAll((found) =>
      found.map((slip) => ({
        height: slip.getBoundingClientRect().height,
        hidden: slip.scrollHeight - slip.clientHeight,
        wide: slip.scrollWidth - slip.clientWidth,
        square: slip.querySelector('svg')?.getBoundingClientRect().width ?? 0,
        modules: Number(slip.querySelector('svg')?.getAttribute('viewBox')?.split(' ')[2]),
      })),
    );
    await page.emulateMedia({ media: 'screen' });
    return slips.flatMap(({ height, hidden, wide, square, modules }, index) => [
      // Four of them and the page's margins of 10 mm make no more than 297 mm.
      ...(4 * height <= 277 * millimetre ? [] : [`slip ${index + 1}: ${height} px high`]),
      ...(hidden <= 0 && wide <= 0 ? [] : [`slip ${index + 1}: cut off by ${hidden} and ${wide} px`]),
      // Without its quiet zone of four modules on either side.
      ...((square * (modules - 8)) / modules >= 30 * millimetre
        ? []
        : [`slip ${index + 1}: QR code of ${square} px with ${modules} modules`]),
    ]);
  }
});
