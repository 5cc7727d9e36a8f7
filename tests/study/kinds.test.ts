import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { FixedKind } from '../../src/core/questions/schema.js';
import { Visitor, testApp, type Shown, type TestApp } from '../support/app.js';
import { answer, cameBack, tokenOf } from '../support/answering.js';
import { sampleOf, twoShapes } from '../support/kind-samples.js';
import { smallPack } from '../support/small-pack.js';

/** Questions in parts, from the page to the row that is kept. Their right answers are in ../support/kind-samples.ts, by their words. */

type PartKind = Exclude<FixedKind, 'single'>;
const kinds: PartKind[] = ['several', 'order', 'pairs', 'place'];

let app: TestApp;
beforeAll(async () => {
  const pack = smallPack();
  app = await testApp({ pack: { ...pack, questions: kinds.map(sampleOf), families: [], drawings: [twoShapes] } });
});
afterAll(() => app.close());

async function asked(kind: PartKind): Promise<[Visitor, Shown]> {
  const visitor = app.visitor();
  await visitor.start('Odo');
  const round = await visitor.round('20');
  for (let tried = 0; tried < kinds.length; tried += 1) {
    const page = await visitor.get(round);
    if (page.words.includes(sampleOf(kind).stem)) return [visitor, page];
    await answer(visitor, page, fields(page, Object.assign({}, ...Object.values(right))));
  }
  throw new Error(`the round has no question of the kind ${kind}`);
}
const rowOf = async (page: Shown) =>
  (
    await app.rows<{ right: boolean; score: number | null; rating: number }>('SELECT "right", score, rating FROM answer WHERE token = $1', [
      tokenOf(page),
    ])
  )[0];

/** The fields that a person would fill in who reads the words beside them; `wanted` says what is chosen for each. */
function fields(page: Shown, wanted: Record<string, string>): Record<string, string> {
  const entries: [string, string][] = [];
  for (const group of page.html.querySelectorAll('[role=radiogroup]')) {
    const text = group.querySelector('p')?.text.trim() ?? '';
    const radio = group
      .querySelectorAll('label')
      .find((label) => label.text.trim() === wanted[text])
      ?.querySelector('input');
    if (radio) entries.push([radio.getAttribute('name') ?? '', radio.getAttribute('value') ?? '']);
  }
  for (const select of page.html.querySelectorAll('select')) {
    const text = page.html.querySelector(`label[for="${select.getAttribute('id')}"]`)?.text.trim() ?? '';
    const option = select.querySelectorAll('option').find((each) => each.text.trim().replace(/^\d\. /, '') === wanted[text]);
    if (option) entries.push([select.getAttribute('name') ?? '', option.getAttribute('value') ?? '']);
  }
  for (const label of page.html.querySelectorAll('label.opt'))
    if (wanted[label.querySelectorAll('span').at(-1)?.text.trim() ?? ''] === 'this')
      entries.push(['option', label.querySelector('input')?.getAttribute('value') ?? '']);
  return Object.fromEntries(entries);
}

const right: Record<PartKind, Record<string, string>> = {
  several: { 'Two is even': 'True', 'Three is even': 'False', 'Four is even': 'True', 'Five is even': 'False' },
  order: { 'Read the maker’s instructions': '1', 'Take off your watch': '2', 'Open the window': '3', 'Connect the charger': '4' },
  pairs: { Voltage: 'volt', Current: 'ampere', 'Potential difference': 'volt' },
  place: { 'on the right': 'this' },
};
const wrong: Record<PartKind, Record<string, string>> = {
  several: { ...right.several, 'Two is even': 'False' },
  order: { 'Open the window': '1', 'Read the maker’s instructions': '2', 'Take off your watch': '3', 'Connect the charger': '4' },
  pairs: { ...right.pairs, Current: 'kilogram' },
  place: { 'on the left': 'this' },
};
const wrongScore: Record<PartKind, number | null> = { several: 0.75, order: 0.8, pairs: 2 / 3, place: null };

describe.each(kinds)('a question of the kind %s', (kind) => {
  it('is right when all of it is, and says so', async () => {
    const [visitor, page] = await asked(kind);
    const outcome = await answer(visitor, page, fields(page, right[kind]));
    expect(outcome.html.querySelector('h1')?.text).toContain('Right.');
    expect(await rowOf(page)).toEqual({ right: true, score: kind === 'place' ? null : 1, rating: 3 });
  });

  it('is not right when a part of it is wrong; the part that was right is kept and said', async () => {
    const [visitor, page] = await asked(kind);
    const outcome = await answer(visitor, page, fields(page, wrong[kind]));
    expect(outcome.html.querySelector('h1')?.text).toContain(kind === 'place' ? 'Not right.' : 'Partly right.');
    const row = await rowOf(page);
    expect(row).toMatchObject({ right: false, rating: 1 });
    if (wrongScore[kind] === null) expect(row?.score).toBeNull();
    else expect(row?.score).toBeCloseTo(wrongScore[kind], 6);
  });

  it('comes back with what was entered when a part is left open, and stores nothing', async () => {
    const [visitor, page] = await asked(kind);
    const [first, ...rest] = Object.entries(fields(page, right[kind]));
    const entered = Object.fromEntries(rest);
    const again = await cameBack(visitor, await visitor.submit(page, '/study/answer', { ...entered, certainty: 'sure' }));
    expect(first).toBeDefined();
    const kept = again.html.querySelectorAll('input[checked], option[selected]').length;
    expect(kept).toBe(rest.length);
    expect(await rowOf(page)).toBeUndefined();
  });

  it('comes back with everything when only the certainty is missing', async () => {
    const [visitor, page] = await asked(kind);
    const entered = fields(page, right[kind]);
    const again = await cameBack(visitor, await visitor.submit(page, '/study/answer', entered));
    expect(again.words).toContain('Say how sure you are');
    expect(again.html.querySelectorAll('input[checked], option[selected]')).toHaveLength(Object.keys(entered).length);
  });

  it('does not tell its key before the answer', async () => {
    const [, page] = await asked(kind);
    const question = sampleOf(kind);
    for (const secret of ['As everybody knows', 'Three is odd', 'Everything else depends', 'That is mass', 'It has corners', 'The ball'])
      expect(page.text).not.toContain(secret);
    expect(page.words).toContain(question.stem);
  });
});

describe('the drawing of a question', () => {
  it('stays with its revision when the pack brings a new one', async () => {
    const rows = await app.rows<{ code: string }>(
      `SELECT d.code FROM question q JOIN question_revision r ON r.question_id = q.id JOIN drawing d ON d.id = r.drawing_id WHERE q.kind = 'place'`,
    );
    expect(rows).toEqual([{ code: 'two-shapes' }]);
  });
});
