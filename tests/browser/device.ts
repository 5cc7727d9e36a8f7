import { existsSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { chromium, type Browser, type BrowserContext, type BrowserContextOptions, type Page } from 'playwright-core';
import type { App } from '../../src/web/app.js';

/** A real Chromium for the tests, and what it did while a page was used. */

const installed = '/usr/bin/chromium';

/** Path of the Chromium to test with: the one that is named, or the usual one. Undefined: these tests are skipped. */
export const chromiumPath = process.env['RUNGWISE_CHROMIUM'] ?? (existsSync(installed) ? installed : undefined);

export const phone = { width: 320, height: 640 };
export const desk = { width: 1280, height: 800 };

export function launch(): Promise<Browser> {
  if (chromiumPath === undefined) throw new Error('No Chromium was found: name one in RUNGWISE_CHROMIUM.');
  return chromium.launch({ executablePath: chromiumPath, args: ['--no-sandbox', '--disable-dev-shm-usage'] });
}

/** Lets an application listen on a free port of this machine. @returns its address, such as http://127.0.0.1:40001 */
export async function listen(app: App): Promise<string> {
  await app.server.listen({ port: 0, host: '127.0.0.1' });
  return `http://127.0.0.1:${(app.server.server.address() as AddressInfo).port}`;
}

export interface Device {
  page: Page;
  context: BrowserContext;
  /** Every address that was asked for. */
  requests: URL[];
  /** What the browser complained of: errors in scripts, refusals by the content security policy, files that would not load. */
  complaints: string[];
}

/** A browser of somebody's own, with its own cookies. */
export async function device(browser: Browser, address: string, options: BrowserContextOptions = {}): Promise<Device> {
  const context = await browser.newContext({
    baseURL: address,
    viewport: phone,
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    reducedMotion: 'reduce',
    ...options,
  });
  context.setDefaultTimeout(10_000);
  const requests: URL[] = [];
  const complaints: string[] = [];
  context.on('request', (request) => requests.push(new URL(request.url())));
  const page = await context.newPage();
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(String(error)));
  return { page, context, requests, complaints };
}

/** @returns the pixels by which a page is too wide for its window; 0 or less when it fits. */
export const tooWide = (page: Page): Promise<number> =>
  page.evaluate(() => (document.scrollingElement?.scrollWidth ?? 0) - window.innerWidth);

/** The words of an element with spaces of all kinds made plain. */
export async function wordsOf(page: Page, selector: string): Promise<string> {
  return (await page.locator(selector).innerText()).replace(/\s+/g, ' ').trim();
}
