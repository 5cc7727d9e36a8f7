import type { Page } from 'playwright-core';

/** What a candidate does with the pages, whatever the pack. */

export const isNumber = async (page: Page): Promise<boolean> => (await page.locator('#answer').count()) > 0;
export const isQuestion = async (page: Page): Promise<boolean> => (await page.locator('form[action="/study/answer"]').count()) > 0;

/** Comes in with this name; stays on the page with the phrase. */
export async function comeIn(page: Page, name: string): Promise<void> {
  await page.goto('/');
  await page.getByLabel('What shall we call you?').fill(name);
  await page.getByRole('button', { name: 'Start', exact: true }).click();
  await page.locator('.slip').waitFor();
}

export async function handIn(page: Page, certainty: 'Sure' | 'Guessing'): Promise<void> {
  await page.getByRole('button', { name: certainty, exact: true }).click();
}

/** From the outcome to the next question or to the end of the round. */
export const goOn = (page: Page): Promise<void> => page.locator('.side .btn.go').click();

/** Gives every part of a question whatever stands first: right or not. */
export async function fillParts(page: Page): Promise<void> {
  for (const group of await page.locator('[role=radiogroup]').all()) await group.getByText('True', { exact: true }).click();
  const steps = (await page.locator('[data-steps]').count()) > 0;
  const selects = await page.locator('select:visible').all();
  if (steps && selects.length === 0) await page.getByText('Sooner').first().click();
  // Without scripts each step is given a place of its own.
  for (const [index, select] of selects.entries()) await select.selectOption({ index: steps ? index + 1 : 1 });
}
