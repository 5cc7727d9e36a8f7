import type { Page } from 'playwright-core';
import { wordsOf } from './device.js';

/** What a candidate does with the pages of the small pack, which is answered by its own rules, read off the page. */

export const isNumber = async (page: Page): Promise<boolean> => (await page.locator('#answer').count()) > 0;
export const isQuestion = async (page: Page): Promise<boolean> => (await page.locator('form[action="/study/answer"]').count()) > 0;

/** Comes in with this name; stays on the page with the phrase. @returns the words of the phrase. */
export async function comeIn(page: Page, name: string): Promise<string[]> {
  await page.goto('/');
  await page.getByLabel('What shall we call you?').fill(name);
  await page.getByRole('button', { name: 'Start', exact: true }).click();
  return await page.locator('.slip li').allInnerTexts();
}

/** The two figures that every stem of the small pack's families prints. */
async function figures(page: Page): Promise<{ current: number; voltage: number }> {
  const stem = await wordsOf(page, 'h1');
  return { current: Number(/takes (\d+) A/.exec(stem)?.[1]), voltage: Number(/(\d+) V/.exec(stem)?.[1]) };
}

/** Power is voltage times current. */
export async function watts(page: Page): Promise<number> {
  const { current, voltage } = await figures(page);
  return current * voltage;
}

/** Fills in the right answer (or one that is not), without handing it in. */
export async function choose(page: Page, right = true): Promise<void> {
  if (await isNumber(page)) {
    const power = await watts(page);
    return await page.locator('#answer').fill(right ? `${power / 1000} kW` : `${(power / 230) * 120} W`);
  }
  const options = page.locator('label.opt');
  const texts = (await options.allInnerTexts()).map((text) => text.replace(/\s+/g, ' '));
  const { current } = await figures(page);
  const fuse = [3, 5, 10, 13].find((rating) => rating >= current);
  const key = texts.findIndex((text) => (Number.isNaN(current) ? text.includes('Key of') : text.endsWith(` ${fuse} A`)));
  if (key === -1) throw new Error(`None of these is the key: ${texts.join(' / ')}`);
  await options.nth(right ? key : (key + 1) % texts.length).click();
}

export async function handIn(page: Page, certainty: 'Sure' | 'Fairly sure' | 'Guessing' = 'Sure'): Promise<void> {
  await page.getByRole('button', { name: certainty, exact: true }).click();
}

/** From the outcome to the next question or to the end of the round. */
export const goOn = (page: Page): Promise<void> => page.locator('.side .btn.go').click();

export interface Asked {
  stem: string;
  typed: boolean;
  right: boolean;
}

/** Answers to the end of the round. `right` says for each question whether to answer it rightly. */
export async function answerAll(page: Page, right: (asked: Omit<Asked, 'right'>) => boolean, look?: () => Promise<void>): Promise<Asked[]> {
  const all: Asked[] = [];
  while (await isQuestion(page)) {
    if (all.length > 60) throw new Error('The round does not end.');
    const question = { stem: await wordsOf(page, 'h1'), typed: await isNumber(page) };
    const asked = { ...question, right: right(question) };
    await choose(page, asked.right);
    await look?.();
    await handIn(page);
    const verdict = await wordsOf(page, 'h1 .word');
    if (verdict.startsWith('Right') !== asked.right) throw new Error(`${asked.stem} was answered, and the page said: ${verdict}`);
    all.push(asked);
    await goOn(page);
  }
  return all;
}
