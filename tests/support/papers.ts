import type { Shown, TestApp, Visitor } from './app.js';

/** A paper from the small pack: every question it has that one letter answers. */
export const sixPaper = { id: 'six', title: 'Six questions', questions: 6, passMark: 4, minutes: 10, shares: { AA: 2, BB: 3, CC: 1 } };

/** Before anybody looks: what the program knows of packs is kept a while. */
export const withBlueprint = async (app: TestApp, blueprint: object = sixPaper): Promise<void> =>
  void (await app.rows('UPDATE pack SET blueprints = $1', [JSON.stringify([blueprint])]));

/** Makes a paper of one's own. @returns the address of its sitting, not begun */
export async function makePaper(visitor: Visitor, fields: Record<string, string> = {}): Promise<string> {
  const made = await visitor.submit(await visitor.get('/papers'), '/papers', { paper: 'small/six', extra: '0', ...fields });
  if (made.location === undefined) throw new Error(`no paper: ${made.status} ${made.words}`);
  return made.location;
}

export async function beginPaper(visitor: Visitor, sitting: string, pages: 'one' | 'all' = 'one'): Promise<Shown> {
  const begun = await visitor.submit(await visitor.get(sitting), `${sitting}/begin`, { pages });
  return await visitor.get(begun.location ?? '');
}

/** The letter of the right option, by the small pack's own rules and what the page prints. */
export function rightLetter(page: Shown, place: number): string {
  const field = page.html.querySelector(`#q${place}`);
  const options = field?.querySelectorAll('label.opt') ?? [];
  const stem = field?.querySelector('.stem')?.text.replace(/[\s\u202f\u00a0]+/g, ' ') ?? '';
  const takes = Number(/takes (\d+) A/.exec(stem)?.[1]);
  const right = options.find(({ text }) => {
    if (text.includes('Key of')) return true;
    return Number.isFinite(takes) && Number.parseFloat(text.replace(/^\s*[A-F]\s*/, '')) === [3, 5, 10, 13].find((fuse) => fuse >= takes);
  });
  return right?.querySelector('input')?.getAttribute('value') ?? '';
}

/** Any letter but the right one. */
export const wrongLetter = (page: Shown, place: number): string => (rightLetter(page, place) === 'A' ? 'B' : 'A');

/** Saves one choice from its own page and goes where the button leads. */
export async function choose(
  visitor: Visitor,
  sitting: string,
  place: number,
  letter: string,
  more: Record<string, string> = {},
): Promise<Shown> {
  const page = await visitor.get(`${sitting}/${place}`);
  return await visitor.submit(page, `${sitting}/save`, { [`c${place}`]: letter, go: '1', ...more });
}
