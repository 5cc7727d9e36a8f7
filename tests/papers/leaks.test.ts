import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Pack } from '../../src/core/pack.js';
import { readPackFolder } from '../../src/packs/index.js';
import { projectFolder } from '../../src/platform/project-folder.js';
import { testApp, type Shown, type TestApp, type Visitor } from '../support/app.js';
import { beginPaper, makePaper } from '../support/papers.js';

/** Every byte that is sent before a paper is handed in, with the pack that is shipped, searched for anything that tells a key. */

let app: TestApp;
let pack: Pack;
beforeAll(async () => {
  const read = await readPackFolder(join(projectFolder, 'question-packs', 'entry-safety'), { tryFamilies: false });
  if (read.pack === null) throw new Error('The shipped pack has errors.');
  pack = read.pack;
  app = await testApp({ pack, start: '2026-11-25T19:00:00Z' });
});
afterAll(() => app.close());

const plain = (text: string): string =>
  text
    .replace(/<[^>]*>/g, '')
    .replace(/&#x27;|&#39;/g, "'")
    .replace(/&quot;/g, '"')
    .replace(/&amp;/g, '&')
    .replace(/[\s\u202f\u00a0]+/g, ' ')
    .trim();

/** What explains a key in the pack: explanations, why people fall for an option, tell-tales, and cautions that belong to one question. */
function tellingTexts(): string[] {
  const fixed = pack.questions.flatMap((question) => {
    const parts = question.kind === 'single' ? question.options : question.kind === 'place' ? question.places : [];
    return [question.explanation, ...parts.flatMap(({ why }) => why ?? [])];
  });
  const families = pack.families.flatMap(({ tellTales, steps }) => [...tellTales.map(({ tell }) => tell), ...steps]);
  // Texts with numbers put in are looked for up to the first of them.
  return [...fixed, ...families].map((text) => plain(text.split('{')[0] ?? '')).filter((text) => text.length >= 25);
}

async function sentBefore(visitor: Visitor, sitting: string): Promise<Shown[]> {
  const sent: Shown[] = [await visitor.get('/papers'), await visitor.get(sitting), await beginPaper(visitor, sitting)];
  const all = await visitor.get(`${sitting}/all`);
  sent.push(all, await visitor.get(`${sitting}/hand-in`));
  const _csrf = all.html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
  const places = all.html.querySelectorAll('fieldset[id^=q]').length;
  for (let place = 1; place <= places; place += 1) {
    sent.push(await visitor.get(`${sitting}/${place}`));
    sent.push(
      await visitor.send('POST', `${sitting}/save`, { _csrf, [`w${place}`]: '', [`c${place}`]: 'A' }, { accept: 'application/json' }),
    );
  }
  return sent;
}

describe('before a paper is handed in', () => {
  it('nothing that is sent explains a key, and no option differs from its neighbours in anything but its letter and words', async () => {
    const telling = tellingTexts();
    expect(telling.length).toBeGreaterThan(1000);
    const visitor = await app.candidate();
    const sitting = await makePaper(visitor, { paper: 'entry-safety/safety-26' });
    const sent = await sentBefore(visitor, sitting);
    expect(sent.filter(({ text }) => text.includes('label class="opt"')).length).toBeGreaterThan(26);
    for (const page of sent) {
      const body = plain(page.text);
      expect(telling.filter((text) => body.includes(text))).toEqual([]);
      for (const word of ['explanation', 'tellTale', 'tell-tale', 'misconception', '"key"', 'correct', 'data-key'])
        expect(page.text.includes(word), `${word} in ${body.slice(0, 80)}`).toBe(false);
      expect(Object.keys(page.headers).filter((name) => /key|answer|solution/i.test(name))).toEqual([]);
      for (const list of page.html.querySelectorAll('ul.opts')) {
        const forms = list.querySelectorAll('label.opt').map((option, index) => {
          const letter = 'ABCDEF'.charAt(index);
          option.querySelector('span:last-child')?.set_content('');
          return option.toString().replaceAll(new RegExp(`-${letter}"|value="${letter}"|>${letter}<| checked`, 'g'), '#');
        });
        expect(new Set(forms.map((form) => form.replaceAll('##', '#'))).size).toBeLessThanOrEqual(2);
      }
    }
    // Until now nothing was marked either.
    expect(await app.rows('SELECT FROM answer')).toEqual([]);
    // The same search finds what is told afterwards.
    await visitor.submit(await visitor.get(`${sitting}/hand-in`), `${sitting}/hand-in`);
    const after = plain((await visitor.get(`${sitting}/review/1`)).text);
    expect(telling.some((text) => after.includes(text))).toBe(true);
  }, 120_000);

  it('the letter of the key is as often one as another, over many papers', async () => {
    const visitor = await app.candidate('Tansy');
    const letters: string[] = [];
    for (let made = 0; made < 8; made += 1) {
      const sitting = await makePaper(visitor, { paper: 'entry-safety/safety-26' });
      await beginPaper(visitor, sitting);
      await visitor.submit(await visitor.get(`${sitting}/hand-in`), `${sitting}/hand-in`);
      for (let place = 1; place <= 26; place += 1) {
        const review = await visitor.get(`${sitting}/review/${place}`);
        letters.push(review.html.querySelector('.opt.key .balloon')?.text ?? '');
      }
    }
    const count = (letter: string): number => letters.filter((each) => each === letter).length;
    expect(letters).toHaveLength(208);
    // With four letters 52 each are expected; 5 standard deviations of a binomial count (6.2) are 31 either way. Some have three or five.
    for (const letter of 'ABCD') expect(Math.abs(count(letter) - 52)).toBeLessThan(31);
  }, 120_000);
});
