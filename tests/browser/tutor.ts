import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { password } from '../support/staff.js';
import { device, type Device } from './device.js';

/** Signs in as the tutor whom `staffOf` makes, and waits for the first page. */
export async function signIn(page: Page): Promise<void> {
  await page.goto('/sign-in');
  await page.fill('#name', 'Tessa');
  await page.fill('#password', password);
  await page.press('#password', 'Enter');
  await page.waitForURL((url) => url.pathname === '/');
}

/** A browser in which that tutor is signed in. */
export async function tutorsDevice(browser: Browser, address: string, options: BrowserContextOptions = {}): Promise<Device> {
  const found = await device(browser, address, options);
  await signIn(found.page);
  return found;
}
