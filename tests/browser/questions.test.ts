import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { testApp, type TestApp } from '../support/app.js';
import { addClass, addPeople, personNamed, recordAnswers, widerPack } from '../support/recorded-answers.js';
import { staffOf } from '../support/staff.js';
import { chromiumPath, device, launch, listen } from './device.js';
import { faultsOf } from './faults.js';
import { signIn } from './tutor.js';

/** Which question is bad, as it is drawn: a key that is wrong, a mistake with a name, statements; and what is not shown. */

describe.skipIf(chromiumPath === undefined)('which question is bad', { timeout: 300_000 }, () => {
  let app: TestApp;
  let browser: Browser;
  let address: string;
  let classId: number;
  beforeAll(async () => {
    app = await testApp({ pack: widerPack(12) });
    await staffOf(app);
    const people = await addPeople(app, 27);
    classId = await addClass(app, 'Thursday beginners', [await personNamed(app, 'Tessa')], people.slice(0, 24));
    // The first has fewest of the others right and the last most; of one question the key is wrong, so that the last ones miss it.
    await recordAnswers(
      app,
      people.flatMap((person, row) => [
        ...Array.from({ length: 12 }, (_, column) => {
          const right = row / 24 > ((column * 7) % 12) / 12;
          return { person, code: `AA-01-${101 + column}`, given: right ? '0' : String(1 + (column % 3)), right };
        }),
        { person, code: 'BB-01-001', given: row < 14 ? '0' : '2', right: row < 14, certainty: 'sure' as const },
        { person, code: 'AA-02-101', given: row < 9 ? 'tftf' : 'tfff', right: row < 9 },
        { person, code: 'nf-twice', given: row < 9 ? '' : '480', right: false, ...(row < 9 ? {} : { tellTale: 'other-supply' }) },
      ]),
    );
    [browser, address] = await Promise.all([launch(), listen(app)]);
  });
  afterAll(async () => {
    await browser?.close();
    await app?.close();
  });

  it('leads from the class to the key in doubt, and is for all eyes on the way', async () => {
    const { page, context, complaints } = await device(browser, address);
    await signIn(page);
    await page.goto(`/classes/${classId}/questions`);
    const faults = await faultsOf(page, 'questions');
    const suspect = page.locator('.suspect', { hasText: 'BB-01-001' });
    expect(await suspect.innerText()).toContain('Those who know more are more often wrong here');
    await suspect.locator('h2 a').click();
    expect(await page.locator('h1').innerText()).toBe('Stem of BB-01-001?');
    faults.push(...(await faultsOf(page, 'one question')));
    await page.getByRole('link', { name: 'Everybody here' }).click();
    expect(await page.locator('.lead').innerText()).toContain('Fewer than five people beyond your classes');
    faults.push(...(await faultsOf(page, 'a hidden one')));
    for (const code of ['AA-02-101', 'nf-twice']) {
      await page.goto(`/classes/${classId}/questions`);
      for (const fold of await page.locator('summary').all()) await fold.click();
      await page.getByRole('link', { name: code }).first().click();
      faults.push(...(await faultsOf(page, code)));
    }
    expect(faults).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
