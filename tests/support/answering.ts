import type { Shown, Visitor } from './app.js';

/** Answers the small pack by its own rules, read off the page as a person would. */

export function tokenOf(page: Shown): string {
  const token = page.html.querySelector('form[action="/study/answer"] input[name=token]')?.getAttribute('value');
  if (token === undefined) throw new Error(`This is no question: ${page.html.querySelector('main')?.text.slice(0, 200) ?? ''}`);
  return token;
}

export const stemOf = (page: Shown): string => page.html.querySelector('h1')?.text.trim() ?? '';

/** The two numbers that every stem of the small pack's families prints: amperes and volts. */
function figures(page: Shown): { current: number; voltage: number } {
  const text = stemOf(page).replace(/[\s\u202f\u00a0]+/g, ' ');
  return { current: Number(/takes (\d+) A/.exec(text)?.[1]), voltage: Number(/(\d+) V/.exec(text)?.[1]) };
}

export function rightFields(page: Shown): Record<string, string> {
  const options = page.html.querySelectorAll('input[name=option]');
  if (options.length === 0) return { value: `${figures(page).current * figures(page).voltage} W` };
  const key = options.find((option) => option.closest('label')?.text.includes('Key of'));
  if (key !== undefined) return { option: key.getAttribute('value') ?? '' };
  return { option: String([3, 5, 10, 13].find((fuse) => fuse >= figures(page).current)) };
}

export function wrongFields(page: Shown): Record<string, string> {
  const options = page.html.querySelectorAll('input[name=option]');
  if (options.length === 0) return { value: `${figures(page).current * 120} W` };
  const right = rightFields(page)['option'];
  return { option: options.map((option) => option.getAttribute('value') ?? '').find((value) => value !== right) ?? '' };
}

export const isNumber = (page: Shown): boolean => page.html.querySelector('input[name=value]') !== null;

/** Answers the question on the page and follows to its outcome. */
export async function answer(visitor: Visitor, page: Shown, fields: Record<string, string>, certainty = 'sure'): Promise<Shown> {
  const sent = await visitor.submit(page, '/study/answer', { ...fields, certainty });
  if (sent.location === undefined)
    throw new Error(`not recorded: ${sent.status} ${sent.html.querySelector('main')?.text.slice(0, 300) ?? ''}`);
  return await visitor.get(sent.location);
}

/** Goes on from question to question until one is of the kind wanted; answers those on the way rightly. */
export async function untilQuestion(visitor: Visitor, round: string, wanted: (page: Shown) => boolean): Promise<Shown> {
  for (let asked = 0; asked < 60; asked += 1) {
    const page = await visitor.get(round);
    if (page.status !== 200) throw new Error('The round ended without such a question.');
    if (wanted(page)) return page;
    await answer(visitor, page, rightFields(page));
  }
  throw new Error('No such question in sixty.');
}

/** The page after an answer that could not be taken: one that can be fetched again, with what was entered. */
export async function cameBack(visitor: Visitor, sent: Shown): Promise<Shown> {
  if (sent.status !== 303) throw new Error(`the answer was met by ${sent.status}`);
  const page = await visitor.get(sent.location ?? '');
  if (!page.text.includes('Not handed in yet.')) throw new Error('the page does not say that the answer was not taken');
  return page;
}
