import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core';

/** A real browser, as `npm test` found it; without one the browser tests are skipped, and CI calls that a failure. */
export const chromiumPath = process.env['RUNGWISE_CHROMIUM'];

export const phone = { width: 320, height: 640 };
export const laptop = { width: 1280, height: 900 };

export const launch = (): Promise<Browser> =>
  chromium.launch({
    executablePath: chromiumPath ?? '',
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });

/** What a page asked for from elsewhere, and what the browser complained of. */
export interface Watched {
  page: Page;
  elsewhere: string[];
  complaints: string[];
}

export async function watched(context: BrowserContext, origin: string): Promise<Watched> {
  const page = await context.newPage();
  const seen: Watched = { page, elsewhere: [], complaints: [] };
  page.on('request', (request) => {
    if (!request.url().startsWith(origin)) seen.elsewhere.push(request.url());
  });
  page.on('console', (message) => {
    // A form that comes back (422) or an address that is not there is logged by the browser as a failed load.
    if (message.type() === 'error' && !/status of (401|403|404|422)/.test(message.text())) seen.complaints.push(message.text());
  });
  page.on('pageerror', (error) => seen.complaints.push(error.message));
  return seen;
}
