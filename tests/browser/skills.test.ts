import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { packWithSkills } from '../support/small-skills.js';
import { skilledApp, type Skilled } from '../support/skilled.js';
import { comeIn } from './candidate.js';
import { chromiumPath, device, launch, listen } from './device.js';
import { faultsOf } from './faults.js';
import { signIn } from './tutor.js';

/** A tutor signs a practical skill on a phone, and the candidate reads it; every page of it under axe. */

describe.skipIf(chromiumPath === undefined)('practical skills in a browser', { timeout: 300_000 }, () => {
  let world: Skilled;
  let browser: Browser;
  let address: string;
  beforeAll(async () => {
    world = await skilledApp(packWithSkills());
    [browser, address] = await Promise.all([launch(), listen(world.app)]);
  });
  afterAll(async () => {
    await browser?.close();
    await world?.app.close();
  });

  const opened = (page: Page, title: string) => page.locator('section', { has: page.locator(`summary:has-text("${title}")`) });

  it.each([true, false])('are signed from the grid, refused kindly, and withdrawn; with scripts: %s', async (javaScriptEnabled) => {
    await world.app.rows('DELETE FROM sign_off');
    const { page, context, complaints } = await device(browser, address, { javaScriptEnabled });
    const faults: string[] = [];
    const look = async (name: string): Promise<void> => void (javaScriptEnabled && faults.push(...(await faultsOf(page, name))));
    await signIn(page);
    await page.goto(`/classes/${world.ids.class}/skills`);
    await look('grid of skills');
    await page.getByRole('link', { name: 'Odo' }).click();
    await page.locator('summary', { hasText: 'Wire a plug' }).click();
    await look('sheet with a skill open');
    const part = opened(page, 'Wire a plug');
    await part.getByLabel('Shows its end.').check();
    await part.getByLabel('Remarks').fill('Nearly.');
    await part.getByRole('button', { name: 'Sign as Tessa' }).click();
    expect(await page.locator('.plate.no').innerText()).toContain('3 criteria are not ticked.');
    await look('sheet that comes back');
    // What was filled in is still there; the rest is ticked.
    const back = opened(page, 'Wire a plug');
    expect(await back.getByLabel('Shows its end.').isChecked()).toBe(true);
    expect(await back.getByLabel('Remarks').inputValue()).toBe('Nearly.');
    for (const text of ['Names the cores.', 'Clamps the grip.', 'Lets it be seen.']) await back.getByLabel(text).check();
    await back.getByRole('button', { name: 'Sign as Tessa' }).click();
    expect(await page.locator('#small_plug summary').first().innerText()).toContain('Wire a plug: signed, seen on 26 Nov 2026');
    await page.locator('#small_plug > details > summary').click();
    await page.getByText('Withdraw this signature').click();
    await look('signed skill');
    await page.getByLabel('Why').fill('Only to see.');
    await page.getByRole('button', { name: 'Withdraw it' }).click();
    expect(await page.locator('#small_plug summary').first().innerText()).toContain('not yet');
    await page.getByRole('link', { name: 'The record, to print' }).click();
    expect(await page.locator('s').innerText()).toContain('Wire a plug.');
    await look('record');
    await page.goto(`/classes/${world.ids.class}/skills/sheet`);
    await look('empty form');
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.btn:visible, nav:visible').count()).toBe(0);
    expect(await page.locator('.fill dt:visible').count()).toBe(8);
    expect(faults).toEqual([]);
    expect(complaints.filter((text) => !text.includes('status of 422'))).toEqual([]);
    await context.close();
  });

  it('are read by a candidate, folded up and with all of them open', async () => {
    const { page, context, complaints } = await device(browser, address);
    await comeIn(page, 'Wren');
    await page.goto('/progress');
    await page.getByRole('link', { name: 'Practical skills' }).click();
    const faults = await faultsOf(page, 'own skills');
    await page.getByRole('link', { name: 'Open all of them, to read or print' }).click();
    faults.push(...(await faultsOf(page, 'own skills, all open')));
    expect(await page.getByText('Stop at once if it is plugged in.').first().isVisible()).toBe(true);
    expect(faults).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
