import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { desk, phone, tooWide } from './device.js';

/** @returns what is wrong with the page as it stands; empty when nothing is. */
export async function faultsOf(page: Page, name: string): Promise<string[]> {
  const faults: string[] = [];
  if ((await page.locator('h1').count()) !== 1) faults.push(`${name}: ${await page.locator('h1').count()} main headings`);
  for (const viewport of [phone, desk]) {
    await page.setViewportSize(viewport);
    const excess = await tooWide(page);
    if (excess > 0) faults.push(`${name} at ${viewport.width}: ${excess} px too wide`);
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      // There are no frames, so the plain way does, which opens no second window.
      const axe = new AxeBuilder({ page }).setLegacyMode();
      // The scheme changes colours and nothing else.
      if (colorScheme === 'dark') axe.withRules('color-contrast');
      const { violations, passes } = await axe.analyze();
      if (passes.length === 0) faults.push(`${name} at ${viewport.width}, ${colorScheme}: no rule had anything to look at`);
      for (const { id, nodes } of violations) faults.push(`${name} at ${viewport.width}, ${colorScheme}: ${id} ${nodes[0]?.html ?? ''}`);
    }
  }
  await page.emulateMedia({ colorScheme: 'light' });
  await page.setViewportSize(phone);
  return faults;
}
