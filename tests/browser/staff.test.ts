import { mkdir, readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { FixedKind } from '../../src/core/questions/schema.js';
import { childrenRunFromSource } from '../packs/source-child.js';
import { goodPack } from '../packs/temporary-pack.js';
import { testApp, type TestApp } from '../support/app.js';
import { sampleOf, twoShapes } from '../support/kind-samples.js';
import { smallPack } from '../support/small-pack.js';
import { staffOf } from '../support/staff.js';
import { zip, type ZipEntry } from '../support/zip.js';
import { comeIn, fillParts, handIn } from './candidate.js';
import { chromiumPath, desk, device, launch, listen, phone, type Device } from './device.js';
import { faultsOf } from './faults.js';
import { tutorsDevice } from './tutor.js';

/** What tutors and club officers do: find a question, answer a query, add a pack; with a phone, without scripts, with keys alone. */

const kinds: FixedKind[] = ['several', 'order', 'pairs', 'place'];
const screens = process.env['RUNGWISE_STAFF_SCREENS'];

describe.skipIf(chromiumPath === undefined)('a tutor', { timeout: 300_000 }, () => {
  childrenRunFromSource();
  let app: TestApp;
  let browser: Browser;
  let address: string;
  beforeAll(async () => {
    const pack = smallPack();
    app = await testApp({ pack: { ...pack, questions: [...pack.questions, ...kinds.map(sampleOf)], drawings: [twoShapes] } });
    await staffOf(app);
    [browser, address] = await Promise.all([launch(), listen(app)]);
    if (screens !== undefined) await mkdir(screens, { recursive: true });
  });
  afterAll(async () => {
    await browser?.close();
    await app?.close();
  });

  const signedIn = (options: Parameters<typeof device>[2] = {}): Promise<Device> => tutorsDevice(browser, address, options);

  async function look(page: Page, name: string): Promise<string[]> {
    if (screens !== undefined)
      for (const [viewport, colorScheme] of [
        [phone, 'light'],
        [desk, 'dark'],
      ] as const) {
        await page.setViewportSize(viewport);
        await page.emulateMedia({ colorScheme });
        await page.screenshot({ path: `${screens}/${name}-${viewport.width}.png`, fullPage: true });
      }
    return await faultsOf(page, name);
  }

  const open = async (page: Page, code: string): Promise<void> => {
    await page.goto(`/bank?text=${code}`);
    await page.click(`.bank a:has-text("${code}")`);
  };

  it('finds questions with the keyboard alone, and every page of the bank is for all eyes', async () => {
    const { page, complaints } = await signedIn();
    await page.goto('/bank');
    const faults = await look(page, 'bank');
    await page.focus('#where');
    for (const key of ['Tab', 'Tab']) await page.keyboard.press(key);
    await page.keyboard.type('charger');
    await page.keyboard.press('Enter');
    await page.waitForURL(/text=charger/);
    expect(await page.locator('.bank li').count()).toBe(1);
    for (const code of ['AA-01-001', 'AA-01-101', 'AA-01-102', 'AA-01-103', 'AA-01-104', 'nf-twice']) {
      await open(page, code);
      faults.push(...(await look(page, `bank-${code}`)));
    }
    expect(faults).toEqual([]);
    expect(complaints).toEqual([]);
  });

  it('answers a candidate’s query without scripts on either side', async () => {
    const odo = await device(browser, address, { javaScriptEnabled: false });
    await comeIn(odo.page, 'Odo');
    await odo.page.click('a.go');
    await odo.page.click('button[name=minutes][value="20"]');
    if ((await odo.page.locator('.parts').count()) > 0) await fillParts(odo.page);
    else if ((await odo.page.locator('#answer').count()) > 0) await odo.page.fill('#answer', '1');
    else await odo.page.locator('label.opt').first().click();
    await handIn(odo.page, 'Sure');
    const faults: string[] = [];
    await odo.page.click('text=Something seems wrong');
    await odo.page.fill('#body', 'My meter says something else.');
    await odo.page.click('button.go');
    await odo.page.waitForURL(/\/queries\/[0-9a-f-]{36}/);

    const tessa = await signedIn({ javaScriptEnabled: false });
    await tessa.page.click('nav >> text=Queries');
    await tessa.page.click('.bank a');
    await tessa.page.fill('#answer', 'Your meter needs a new battery.');
    await tessa.page.click('button.go');
    await tessa.page.waitForURL(/\/queries\/[0-9a-f-]{36}$/);

    await odo.page.goto('/');
    await odo.page.click('text=A tutor has answered your query.');
    await odo.page.click('.bank a');
    expect(await odo.page.locator('main').innerText()).toContain('Your meter needs a new battery.');

    const eyes = await signedIn();
    for (const path of ['/queries', new URL(tessa.page.url()).pathname, '/queries/new?question=1&revision=1']) {
      await eyes.page.goto(path);
      faults.push(...(await look(eyes.page, path.replaceAll('/', ' ').slice(0, 14).trim())));
    }
    expect(faults).toEqual([]);
  });

  it('adds a pack without scripts: report, what changes, confirm', async () => {
    const { page, complaints } = await signedIn({ javaScriptEnabled: false });
    const eyes = await signedIn();
    await page.goto('/packs');
    await page.click('button.go');
    expect(await page.locator('.plate.no').innerText()).toContain('Choose the archive first');
    const faults: string[] = [];
    const send = async (name: string, buffer: Buffer): Promise<void> => {
      await page.goto('/packs');
      await page.setInputFiles('#file', { name, mimeType: 'application/zip', buffer });
      await page.click('button.go');
      await page.waitForURL(/\/packs\/uploads\//);
      await eyes.page.goto(new URL(page.url()).pathname);
      faults.push(...(await look(eyes.page, name)));
    };
    await send('with-errors.zip', await archive((text) => text.replace('demand: apply', 'demand: aply')));
    expect(await page.locator('h1').innerText()).toMatch(/error/);
    await send('good.zip', await archive((text) => text));
    await page.click('text=Add this pack');
    await page.waitForSelector('text=is in the bank');
    await eyes.page.goto('/packs');
    faults.push(...(await look(eyes.page, 'packs')));
    expect(faults).toEqual([]);
    expect(complaints.filter((text) => !text.includes('422'))).toEqual([]);
  });
});

async function archive(change: (text: string) => string): Promise<Buffer> {
  const files = (await readdir(goodPack, { recursive: true, withFileTypes: true })).filter((entry) => entry.isFile());
  const entries = files.map(async (entry): Promise<ZipEntry> => {
    const path = join(entry.parentPath, entry.name);
    return { name: path.slice(goodPack.length + 1), content: change(await readFile(path, 'utf8')) };
  });
  return zip(await Promise.all(entries));
}
