import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Pack } from '../../src/core/pack.js';
import { readPackFolder } from '../../src/packs/index.js';
import { projectFolder } from '../../src/platform/project-folder.js';
import { testApp, type Shown, type TestApp, type Visitor } from '../support/app.js';
import { chooseIn, classOf, held, makeEvening, type TestClass } from '../support/evenings.js';

/** Every byte that the screen and the phones are sent before a question is shown, with the pack that is shipped. */

let app: TestApp;
let own: TestClass;
let pack: Pack;
beforeAll(async () => {
  const read = await readPackFolder(join(projectFolder, 'question-packs', 'entry-safety'), { tryFamilies: false });
  if (read.pack === null) throw new Error('The shipped pack has errors.');
  pack = read.pack;
  app = await testApp({ pack, start: '2026-11-25T19:00:00Z' });
  own = await classOf(app);
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

/** What explains a key in the pack: explanations, why people fall for an option, tell-tales and steps. */
function tellingTexts(): string[] {
  const fixed = pack.questions.flatMap((question) => {
    const parts = question.kind === 'single' ? question.options : question.kind === 'place' ? question.places : [];
    return [question.explanation, ...parts.flatMap(({ why }) => why ?? [])];
  });
  const families = pack.families.flatMap(({ tellTales, steps }) => [...tellTales.map(({ tell }) => tell), ...steps]);
  return [...fixed, ...families].map((text) => plain(text.split('{')[0] ?? '')).filter((text) => text.length >= 25);
}

/** All of a page but the tokens of its forms, which are others every time. */
const bytes = ({ text }: Shown): string => text.replace(/name="_csrf" value="[^"]*"/g, '');

/** Options without their letters, words and one's own choice: then each must look like its neighbours. */
function looks(page: Shown): string[] {
  const options = page.html.querySelectorAll('.opts .opt').map((option, index) => {
    const letter = 'ABCDEF'.charAt(index);
    option.querySelector('span:last-child, p')?.set_content('');
    return option
      .toString()
      .replaceAll(
        new RegExp(`-${letter}"|value="${letter}"|>${letter}<|aria-pressed="\\w+"| mine|<p class="note">Your answer</p>`, 'g'),
        '',
      );
  });
  return [...new Set(options)];
}

describe('before a question is shown', () => {
  it('nothing on the screen or on a phone explains the key or tells what others chose', async () => {
    const telling = tellingTexts();
    expect(telling.length).toBeGreaterThan(1000);
    const people: Visitor[] = [];
    for (const name of ['Odo', 'Tansy', 'Vane']) people.push(await own.member(name));
    const [odo, tansy, vane] = people as [Visitor, Visitor, Visitor];
    const drawn = pack.questions.filter(({ kind }) => kind === 'place').map(({ id }) => id);
    const families = await app.rows<{ code: string }>(`SELECT code FROM question WHERE kind = 'numeric' ORDER BY code`);
    const named = [
      ...drawn.slice(0, 3),
      ...pack.questions
        .filter(({ kind }) => kind === 'single')
        .slice(0, 4)
        .map(({ id }) => id),
    ];
    const evening = await makeEvening(own, { questions: named.join(' '), count: '9', 'topic-FU': 'on' });
    expect(families.length).toBeGreaterThan(10);
    const at = held(own, evening);
    const [count] = await app.rows<{ count: number }>('SELECT count(*)::int AS count FROM evening_item WHERE evening_id = $1', [evening]);
    let found = 0;
    const sent: Shown[] = [await odo.get('/evening'), await odo.get(`/evening/${evening}`), await at.screen()];
    for (let position = 1; position <= (count?.count ?? 0); position += 1) {
      await at.press('next');
      sent.push(await odo.get(`/evening/${evening}`), await at.screen(), await odo.get(`/evening/${evening}/${position}`));
      await at.press('open');
      for (const visitor of [odo, tansy]) sent.push(await chooseIn(visitor, evening, 'A'));
      const before = [await at.screen(), await vane.get(`/evening/${evening}`), await odo.get(`/evening/${evening}`)];
      sent.push(await chooseIn(tansy, evening, 'B'));
      const after = [await at.screen(), await vane.get(`/evening/${evening}`), await odo.get(`/evening/${evening}`)];
      // Somebody's other choice changes not a byte for anybody else.
      expect(after.map(bytes)).toEqual(before.map(bytes));
      await at.press('close', { 'hand-A': '3', 'hand-B': '1' });
      sent.push(
        ...before,
        ...after,
        await at.screen(),
        await odo.get(`/evening/${evening}`),
        await odo.get(`/evening/${evening}/${position}`),
      );
      sent.push(await odo.get('/progress/answers'), await odo.get('/progress/answers?show=wrong'));
      for (const page of [...before, await at.screen(), await odo.get(`/evening/${evening}`)])
        expect(looks(page).length).toBeLessThanOrEqual(1);
      // The same search finds what is told once the question is shown.
      await at.press('show');
      for (const page of [await at.screen(), await odo.get(`/evening/${evening}`)]) {
        if (telling.some((text) => plain(page.text).includes(text))) found += 1;
        expect(page.text).toContain('sign-line');
      }
    }
    for (const page of sent) {
      const body = plain(page.text);
      expect(telling.filter((text) => body.includes(text))).toEqual([]);
      for (const word of [
        'explanation',
        'tellTale',
        'tell-tale',
        'misconception',
        '"key"',
        'correct',
        ' key',
        'Chosen',
        'rect width',
        'sign-line',
        '4 hands',
        'on phones and',
      ])
        expect(page.html.querySelector('main')?.toString().includes(word) ?? false, `${word} in ${body.slice(0, 200)}`).toBe(false);
      expect(Object.keys(page.headers).filter((name) => /key|answer|solution/i.test(name))).toEqual([]);
    }
    expect(sent.filter(({ text }) => text.includes('<svg class="drawn"') || text.includes('class="drawing')).length).toBeGreaterThan(10);
    expect(found).toBeGreaterThanOrEqual(2 * named.length);
    expect((await at.screen()).text).toContain('rect width');
    expect((await odo.get('/progress/answers')).words).toContain('at a class evening');
  }, 180_000);
});
