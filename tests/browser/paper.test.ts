import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { testApp, type TestApp } from '../support/app.js';
import { freshDatabase, type TestDatabase } from '../support/database.js';
import { withBlueprint } from '../support/papers.js';
import { freePort, startServer } from '../support/server-process.js';
import { comeIn } from './candidate.js';
import { chromiumPath, device, launch, listen, wordsOf } from './device.js';
import { faultsOf } from './faults.js';

/** A paper on a phone: with scripts and without, by keyboard, through the end of a server, against the clock. */

const minute = 60_000;

async function make(page: Page, begin: RegExp): Promise<void> {
  await page.goto('/papers');
  await page.getByRole('button', { name: 'Make a paper' }).click();
  await page.getByRole('button', { name: begin }).click();
  await page.locator('.time').waitFor();
}

const choice = (page: Page, place: number, index: number) => page.locator(`#q${place} label.opt`).nth(index);

describe.skipIf(chromiumPath === undefined)('a paper on a phone', () => {
  let browser: Browser;
  let database: TestDatabase;
  beforeAll(async () => {
    [browser, database] = await Promise.all([launch(), freshDatabase()]);
  });
  afterAll(async () => {
    await browser?.close();
    await database?.drop();
  });

  it('is sat through the sudden end of the server: what was saved is there, what was not is sent again', async () => {
    const port = String(await freePort());
    let server = await startServer({ DATABASE_URL: database.url, PORT: port });
    const { page, context } = await device(browser, server.address);
    const faults: string[] = [];
    await comeIn(page, 'Wren');
    await page.goto('/papers');
    faults.push(...(await faultsOf(page, 'papers')));
    await page.getByRole('button', { name: 'Make a paper' }).click();
    faults.push(...(await faultsOf(page, 'cover')));
    await page.getByRole('button', { name: /one question a page/ }).click();
    await choice(page, 1, 0).click();
    await page.getByText('Saved.').waitFor();
    faults.push(...(await faultsOf(page, 'question of a paper')));
    await page.getByRole('button', { name: 'Save, go to 2' }).click();
    expect(await page.locator('[data-cell="1"] [data-choice]').innerText()).toBe('A');

    await server.end('SIGKILL');
    await choice(page, 2, 1).click();
    await page.getByText('Not saved yet').waitFor();
    server = await startServer({ DATABASE_URL: database.url, PORT: port });
    await page.getByText('Saved.').waitFor({ timeout: 30_000 });
    await page.reload();
    expect(await page.locator('#q2 input:checked').getAttribute('value')).toBe('B');

    await page.getByRole('link', { name: 'All questions on one page' }).click();
    const last = await page.locator('fieldset[id^=q]').count();
    faults.push(...(await faultsOf(page, 'all of a paper')));
    for (let place = 3; place <= last; place += 1) await choice(page, place, 0).click();
    await page.locator('#q3 input[type=checkbox]').check();
    await expect.poll(() => page.locator('[data-count=open]').innerText()).toBe('0');
    await page.getByRole('link', { name: 'Hand in the paper' }).click();
    expect(await wordsOf(page, 'main')).toContain('Every question has an answer.');
    expect(await wordsOf(page, 'main')).toContain('To look at again: 3');
    faults.push(...(await faultsOf(page, 'handing in')));
    await page.getByRole('button', { name: 'Hand it in now' }).click();
    expect(await wordsOf(page, 'h1')).toMatch(new RegExp(`^\\d+ of ${last}: (not )?passed$`));
    faults.push(...(await faultsOf(page, 'result')));
    await page.locator('tbody a').first().click();
    faults.push(...(await faultsOf(page, 'review')));
    await page.getByRole('button', { name: /^Go over .* now$/ }).click();
    expect(await page.locator('.sheet-head').innerText()).toMatch(/Question 1 of|End of the round/);
    expect(faults).toEqual([]);
    await context.close();
    await server.end('SIGTERM');
  }, 300_000);
});

describe.skipIf(chromiumPath === undefined)('a paper of six questions', () => {
  let browser: Browser;
  let app: TestApp;
  let address: string;
  beforeAll(async () => {
    app = await testApp({ start: '2026-11-25T19:00:00Z' });
    await withBlueprint(app);
    [browser, address] = await Promise.all([launch(), listen(app)]);
  });
  afterAll(async () => {
    await browser?.close();
    await app?.close();
  });

  it('works without scripts: buttons save and lead on', async () => {
    const { page, context } = await device(browser, address, { javaScriptEnabled: false });
    await comeIn(page, 'Odo');
    await make(page, /one question a page/);
    await choice(page, 1, 2).click();
    await page.getByText('Look at this one again').click();
    await page.getByRole('button', { name: 'Save, go to 2' }).click();
    await choice(page, 2, 0).click();
    await page.getByRole('button', { name: 'Back to 1' }).click();
    expect(await page.locator('#q1 input[type=radio]:checked').getAttribute('value')).toBe('C');
    expect(await page.locator('#q1 input[type=checkbox]').isChecked()).toBe(true);
    expect(await wordsOf(page, '.side')).toContain('2 saved, 4 to go.');
    await page.getByRole('link', { name: 'All questions on one page' }).click();
    for (const place of [3, 4, 5, 6]) await choice(page, place, 0).click();
    await page.getByRole('button', { name: 'Save, and look over it before handing in' }).click();
    await page.getByRole('button', { name: 'Hand it in now' }).click();
    expect(await wordsOf(page, 'h1')).toMatch(/^\d of 6: /);
    await context.close();
  }, 120_000);

  it('can be sat with the keyboard alone', async () => {
    const { page, context } = await device(browser, address);
    await comeIn(page, 'Tansy');
    await make(page, /one question a page/);
    await page.locator('#c1-A').focus();
    await page.keyboard.press('ArrowDown');
    await page.getByText('Saved.').waitFor();
    expect(await page.locator('#q1 input[type=radio]:checked').getAttribute('value')).toBe('B');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Space');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.locator('#q2').waitFor();
    expect(await page.locator('[data-cell="1"]').innerText()).toContain('B');
    expect(await page.locator('[data-cell="1"] .corner').count()).toBe(1);
    await context.close();
  }, 120_000);

  it('says the last minutes politely, and ends by itself with what was saved', async () => {
    const { page, context } = await device(browser, address);
    await comeIn(page, 'Vane');
    await make(page, /one question a page/);
    await choice(page, 1, 0).click();
    await page.getByText('Saved.').waitFor();
    app.clock.forward(9 * minute - 3000);
    await page.reload();
    const said = page.locator('.time [role=status]');
    expect(await said.innerText()).toBe('');
    await expect.poll(() => said.innerText(), { timeout: 10_000 }).toBe('1 minute left.');
    app.clock.forward(minute);
    await page.reload();
    await expect.poll(() => page.locator('.left').innerText(), { timeout: 8000 }).toBe('1 minute left');
    app.clock.forward(3001);
    await expect.poll(() => page.url(), { timeout: 15_000 }).toContain('/result');
    expect(await wordsOf(page, 'h1')).toMatch(/^[01] of 6: not passed$/);
    await context.close();
  }, 120_000);

  it('is set, printed, typed in and gone through by a tutor, on pages that axe finds nothing on', async () => {
    const { page, context } = await device(browser, address);
    await app.candidate('Bryony');
    await app.rows(`WITH made AS (INSERT INTO study_class (name) VALUES ('Thursday beginners') RETURNING id)
      INSERT INTO class_member (class_id, person_id) SELECT made.id, person.id FROM made, person`);
    const faults: string[] = [];
    const look = async (name: string) => void faults.push(...(await faultsOf(page, name)));
    await page.goto(`/set-up/${await app.accounts.setUpToken()}`);
    await page.locator('#name').fill('Alma');
    await page.locator('#password').fill('four kettles on a hill');
    await page.getByRole('button', { name: 'Save and sign in' }).click();
    await page.getByRole('link', { name: 'Papers', exact: true }).click();
    await page.locator('#versions').fill('3');
    await look('setting a paper');
    await page.getByRole('button', { name: 'Set the paper' }).click();
    await look('a class paper');
    const paper = page.url();
    await page.getByRole('link', { name: 'Print papers' }).click();
    await look('printing');
    await page.goto(`${paper}/enter`);
    await page.locator('select').first().selectOption({ label: 'Bryony' });
    await look('typing in');
    await page.goto(`${paper}/csv`);
    await look('a table of results');
    await page.goto(`${paper}/review/1`);
    await look('going through it');
    await page.getByRole('link', { name: 'Show the key and the counts' }).click();
    await look('the key on the wall');
    for (const [path, name] of [
      ['/class-papers/blueprints', 'make-ups'],
      ['/class-papers/calibration', 'outlook and papers'],
    ] as const) {
      await page.goto(path);
      await look(name);
    }
    expect(faults).toEqual([]);
    await context.close();
  }, 300_000);
});
