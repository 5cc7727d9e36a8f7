import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { testApp, type TestApp } from '../support/app.js';
import { classOf, makeEvening, type TestClass } from '../support/evenings.js';
import { sampleOf, twoShapes } from '../support/kind-samples.js';
import { smallPack } from '../support/small-pack.js';
import { comeIn } from './candidate.js';
import { chromiumPath, desk, device, launch, listen, wordsOf, type Device } from './device.js';
import { faultsOf } from './faults.js';
import { tutorsDevice } from './tutor.js';

/** A class evening with a projector, two phones and the tutor's own machine: with scripts, without, and by keyboard. */

const place = sampleOf('place');

describe.skipIf(chromiumPath === undefined)('a class evening in a browser', { timeout: 300_000 }, () => {
  let app: TestApp;
  let own: TestClass;
  let browser: Browser;
  let address: string;
  beforeAll(async () => {
    const pack = smallPack();
    app = await testApp({ pack: { ...pack, questions: [...pack.questions, place], drawings: [twoShapes] }, start: '2026-11-25T19:00:00Z' });
    own = await classOf(app);
    [browser, address] = await Promise.all([launch(), listen(app)]);
  });
  afterAll(async () => {
    await browser?.close();
    await app?.close();
  });

  const tutor = (options: Parameters<typeof device>[2] = {}): Promise<Device> =>
    tutorsDevice(browser, address, { viewport: desk, ...options });

  async function member(name: string, options: Parameters<typeof device>[2] = {}): Promise<Device> {
    const found = await device(browser, address, options);
    await comeIn(found.page, name);
    await app.rows('INSERT INTO class_member (class_id, person_id) SELECT $1, max(id) FROM person WHERE display_name = $2', [
      own.classId,
      name,
    ]);
    return found;
  }

  const openControl = async (page: Page, evening: string): Promise<void> =>
    void (await page.goto(`/classes/${own.classId}/evenings/${evening}`));
  const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).click();
  const said = (page: Page): Promise<string> => page.locator('[data-said]').innerText();
  const faultsHere: string[] = [];
  const look = async (page: Page, name: string): Promise<void> => {
    const size = page.viewportSize();
    faultsHere.push(...(await faultsOf(page, name)));
    if (size !== null) await page.setViewportSize(size);
  };

  it('is followed by the projector and two phones from the first question to the end, on pages that axe finds nothing on', async () => {
    const [control, odo, tansy] = [await tutor(), await member('Odo'), await member('Tansy')];
    await control.page.goto(`/classes/${own.classId}/evenings`);
    await look(control.page, 'evenings');
    await control.page.fill('#title', 'Shapes');
    await control.page.fill('#questions', `${place.id} AA-01-001`);
    await press(control.page, 'Make the evening');
    const screen = await control.context.newPage();
    await screen.goto(`${new URL(control.page.url()).pathname}/screen`);
    // One by its own address; the other where candidates are sent, which goes on by itself when it begins.
    await odo.page.goto(`/evening/${new URL(control.page.url()).pathname.split('/').at(-1)}`);
    await tansy.page.goto('/evening');
    await look(tansy.page, 'waiting');
    await look(odo.page, 'phone before');

    await press(control.page, 'Begin: put up question 1');
    for (const page of [odo.page, tansy.page, screen]) await page.locator('h1.stem', { hasText: place.stem.slice(0, 12) }).waitFor();
    expect(await said(odo.page)).toBe('Question 1 is on the screen.');
    await press(control.page, 'Open for answers');
    await odo.page.locator('button.opt').first().waitFor();
    expect(await said(odo.page)).toBe('The tutor opened question 1.');
    // Letters that fifteen metres away can be read: 28 px or more, at 1280 wide.
    const sizes = await screen
      .locator('h1.stem, .wall-opts .opt p')
      .evaluateAll((all) => all.map((each) => Number.parseFloat(getComputedStyle(each).fontSize)));
    expect(sizes.length).toBeGreaterThan(3);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(28);
    await odo.page.locator('#choose-B').click();
    await odo.page.getByText('Your answer: B. You can change it').waitFor();
    expect(await odo.page.locator('#choose-B').getAttribute('aria-pressed')).toBe('true');
    await screen.getByText('1 of 2 has answered.').waitFor();
    await odo.page.locator('#choose-A').click();
    await odo.page.getByText('Your answer: A.').waitFor();
    // What is chosen and what has the focus stay as others answer, and after a look of one's own.
    await tansy.page.locator('#choose-C').click();
    await control.page.getByText('2 of 2 have answered.').waitFor();
    await odo.page.reload();
    expect(await odo.page.locator('#choose-A').getAttribute('aria-pressed')).toBe('true');
    for (const [page, name] of [
      [odo.page, 'phone open'],
      [screen, 'screen open'],
      [control.page, 'control open'],
    ] as const)
      await look(page, name);

    await control.page.getByRole('button', { name: 'One hand more for B' }).dblclick();
    await control.page.getByText('Saved.').waitFor();
    expect(await control.page.locator('#hand-B').inputValue()).toBe('2');
    expect(await control.page.evaluate(() => document.activeElement?.id)).toBe('hand-B-more');
    for (const button of await control.page.locator('.hands button').all()) {
      const box = await button.boundingBox();
      expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(44);
    }
    await press(control.page, 'Close the question');
    await odo.page.getByText('The question is closed. Your answer: A.').waitFor();
    expect(await said(odo.page)).toBe('The tutor closed question 1.');
    expect(await screen.locator('.count').count()).toBe(0);
    await press(control.page, 'Show the counts and the answer');
    await screen.locator('.count').first().waitFor();
    const counts = await screen.locator('.count b').allInnerTexts();
    // Two choices on phones are too few to stand before the class; the hands everybody has seen.
    expect(counts.map((text) => text.replace(/\D/g, '')).slice(0, 3)).toEqual(['0', '2', '0']);
    expect(await wordsOf(screen, '.wall-state')).toContain('2 answers on phones: too few to count here');
    await odo.page.locator('h1 .word').waitFor();
    await control.page.getByText('The right answer and the reasons').click();
    for (const [page, name] of [
      [odo.page, 'phone shown'],
      [screen, 'screen shown'],
      [control.page, 'control shown'],
    ] as const)
      await look(page, name);

    await press(control.page, 'Next question');
    await tansy.page.locator('h1.stem', { hasText: 'Stem of AA-01-001' }).waitFor();
    await control.page.getByText('End the evening').click();
    await press(control.page, 'End it now');
    await odo.page.getByText('This evening is over').waitFor();
    await screen.getByText('The questions are over').waitFor();
    for (const [page, name] of [
      [odo.page, 'phone over'],
      [control.page, 'control over'],
    ] as const)
      await look(page, name);
    await odo.page.getByRole('link', { name: /^1\. / }).click();
    expect(await wordsOf(odo.page, 'h1')).toMatch(/^(Right|Not right)\./);
    expect(faultsHere).toEqual([]);
    for (const { complaints, context } of [control, odo, tansy]) {
      expect(complaints).toEqual([]);
      await context.close();
    }
  });

  it('works without scripts on either side: buttons, and Look again', async () => {
    const evening = await makeEvening(own, { questions: 'AA-01-001' });
    const [control, wren] = [await tutor({ javaScriptEnabled: false }), await member('Wren', { javaScriptEnabled: false })];
    await openControl(control.page, evening);
    await wren.page.goto(`/evening/${evening}`);
    await press(control.page, 'Begin: put up question 1');
    await press(control.page, 'Open for answers');
    await wren.page.getByRole('link', { name: 'Look again' }).click();
    await wren.page.locator('#choose-C').click();
    expect(await wordsOf(wren.page, '[data-own]')).toContain('Your answer: C.');
    await wren.page.locator('#choose-D').click();
    await control.page.fill('#hand-A', '5');
    // Enter in a box keeps the hands and takes no step.
    await control.page.press('#hand-A', 'Enter');
    expect(await wordsOf(control.page, '#part-state')).toContain('Open for answers on phones.');
    expect(await control.page.locator('#hand-A').inputValue()).toBe('5');
    await press(control.page, 'Close the question');
    await wren.page.locator('#choose-A').click();
    expect(await wordsOf(wren.page, '[role=alert]')).toBe(
      'The question was closed before A came, so it was not taken. Your answer stays D.',
    );
    await press(control.page, 'Show the counts and the answer');
    await control.page.getByRole('link', { name: 'Screen for the projector' }).click();
    expect(await wordsOf(control.page, '.wall-state')).toContain('5 hands. 1 answer on a phone: too few to count here');
    await wren.page.getByRole('link', { name: 'Look again' }).click();
    expect(await wordsOf(wren.page, 'h1')).toMatch(/^(Right|Not right)\./);
    await control.context.close();
    await wren.context.close();
  });

  it('can be held and answered with the keyboard alone, and the focus stays where it was', async () => {
    const evening = await makeEvening(own, { questions: 'AA-01-001' });
    const [control, nettie] = [await tutor(), await member('Nettie')];
    await openControl(control.page, evening);
    await nettie.page.goto(`/evening/${evening}`);
    for (const words of ['On the screen.', 'Open for answers on phones.']) {
      await control.page.locator('#go').focus();
      await control.page.keyboard.press('Enter');
      await control.page.locator('#part-state', { hasText: words }).waitFor();
    }
    await nettie.page.locator('#choose-A').waitFor();
    await nettie.page.locator('#choose-A').focus();
    await nettie.page.keyboard.press('Tab');
    await nettie.page.keyboard.press('Space');
    await nettie.page.getByText('Your answer: B.').waitFor();
    expect(await nettie.page.evaluate(() => document.activeElement?.id)).toBe('choose-B');
    // After a press the next Tab comes to the buttons again.
    await control.page.keyboard.press('Tab');
    expect(await control.page.evaluate(() => document.activeElement?.id)).toBe('go');
    await control.page.keyboard.press('Enter');
    await nettie.page.getByText('The question is closed.').waitFor();
    // What had the focus is gone: it goes to the part, not to the top of the page.
    expect(await nettie.page.evaluate(() => document.activeElement?.id)).toBe('part-answer');
    await control.context.close();
    await nettie.context.close();
  });

  it('keeps a choice that was made without a connection until the server has it, and looks again where there is no stream', async () => {
    const evening = await makeEvening(own, { questions: 'AA-01-001' });
    const [control, corin] = [await tutor(), await member('Corin')];
    await corin.page.route('**/events', (route) => route.fulfill({ status: 503, body: '' }));
    await corin.page.goto(`/evening/${evening}`);
    await openControl(control.page, evening);
    await press(control.page, 'Begin: put up question 1');
    await press(control.page, 'Open for answers');
    await corin.page.locator('#choose-A').waitFor({ timeout: 9000 });
    await corin.page.route('**/answer', (route) => route.abort());
    await corin.page.locator('#choose-A').click();
    await corin.page.getByText('A is not saved yet: no connection.').waitFor();
    expect(await app.rows('SELECT FROM evening_answer WHERE evening_id = $1', [evening])).toEqual([]);
    await corin.page.unroute('**/answer');
    await corin.page.getByText('Your answer: A. You can change it').waitFor();
    expect(await app.rows('SELECT choice FROM evening_answer WHERE evening_id = $1', [evening])).toEqual([{ choice: 'A' }]);
    await control.context.close();
    await corin.context.close();
  });
});
