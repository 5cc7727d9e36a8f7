import { describe, expect, it } from 'vitest';
import { answeredPart, keyWords, scoreWords } from '../../../src/core/tasks/answered-part.js';
import { askedPart } from '../../../src/core/tasks/asked-part.js';
import { markGiven, readEntry, showFixed } from '../../../src/core/tasks/index.js';
import { emptyEntry, type Entry, type Task } from '../../../src/core/tasks/task.js';
import { sampleOf, twoShapes } from '../../support/kind-samples.js';

const kinds = ['single', 'several', 'order', 'pairs', 'place'] as const;
type Kind = (typeof kinds)[number];
const seeds = Array.from({ length: 200 }, (_, seed) => seed);

const shown = <K extends Kind>(kind: K, seed: number): Task => showFixed(sampleOf(kind), seed, kind === 'place' ? twoShapes : null);
const taskOf = <T extends Task['kind']>(task: Task, kind: T): Extract<Task, { kind: T }> => {
  if (task.kind !== kind) throw new Error(`expected ${kind}, got ${task.kind}`);
  return task as Extract<Task, { kind: T }>;
};

const parts = (fields: Record<number, string>): Entry => ({ ...emptyEntry, parts: [0, 1, 2, 3, 4, 5].map((n) => fields[n] ?? '') });

/** Finds on the page, by its words, what a person would choose: a way that knows nothing of numbers in packs. */
function answerByWords(kind: Kind, seed: number, words: Record<string, string>): Entry {
  const page = askedPart('', shown(kind, seed), null, emptyEntry, null);
  const wanted = (text: string): string => words[text] ?? '';
  if (page.statements) return parts(Object.fromEntries(page.statements.map(({ name, text }) => [name.slice(5), wanted(text)])));
  const rows = page.steps ?? page.pairs;
  if (rows)
    return parts(
      Object.fromEntries(
        rows.map(({ name, text, choices }) => [
          name.slice(5),
          choices.find((c) => c.text.replace(/^\d\. /, '') === wanted(text))?.value ?? '',
        ]),
      ),
    );
  const list = page.options ?? page.places ?? [];
  return { ...emptyEntry, option: list.find(({ text }) => wanted(text) === 'this')?.value ?? '' };
}

const rightWords: Record<Kind, Record<string, string>> = {
  single: { Alpha: 'this' },
  several: { 'Two is even': 't', 'Three is even': 'f', 'Four is even': 't', 'Five is even': 'f' },
  order: { 'Read the maker’s instructions': '1', 'Open the window': '2', 'Take off your watch': '3', 'Connect the charger': '4' },
  pairs: { Voltage: 'volt', Current: 'ampere', 'Potential difference': 'volt' },
  place: { 'on the right': 'this' },
};

const scoreOf = (kind: Kind, seed: number, words: Record<string, string>): number => {
  const reading = readEntry(shown(kind, seed), answerByWords(kind, seed, words));
  if ('why' in reading) throw new Error(reading.why);
  return reading.mark.score;
};

describe.each(kinds)('a question of the kind %s', (kind) => {
  it('takes the right answer for wholly right, in whatever order it is shown', () => {
    for (const seed of seeds) expect(scoreOf(kind, seed, rightWords[kind])).toBe(1);
  });

  it('marks an answer as it is kept as it marked it when it came', () => {
    for (const seed of seeds.slice(0, 40)) {
      const task = shown(kind, seed);
      const reading = readEntry(task, answerByWords(kind, seed, rightWords[kind]));
      if ('why' in reading) throw new Error(reading.why);
      expect(markGiven(task, reading.given)).toEqual(reading.mark);
    }
  });

  it('asks again for an empty form and for nonsense in every field', () => {
    for (const text of ['', 'x', '-1', '99', '1.5', 'tt', '<b>']) {
      const entry: Entry = { option: text, value: text, parts: Array<string>(6).fill(text) };
      expect(readEntry(shown(kind, 1), entry)).toHaveProperty('why');
    }
  });

  it('shows its parts in different orders to different seeds, and in the same to the same', () => {
    const texts = (seed: number) => JSON.stringify(askedPart('', shown(kind, seed), null, emptyEntry, null));
    const variants = new Set(seeds.map(texts)).size;
    // Places keep the letters that go with how they lie on the drawing.
    expect(variants > 1).toBe(kind !== 'place');
    expect(texts(7)).toBe(texts(7));
  });

  it('says nothing before the answer that tells the key', () => {
    const page = JSON.stringify(askedPart('Stem', shown(kind, 3), null, emptyEntry, null));
    for (const telling of ['"key"', '"holds"', '"why":"', '"place":', '"rank"', 'The ball']) expect(page).not.toContain(telling);
  });

  it('keeps what was entered when the form comes back', () => {
    const page = askedPart('', shown(kind, 5), null, answerByWords(kind, 5, rightWords[kind]), null);
    const kept =
      page.statements?.filter(({ yes, no }) => yes || no).length ??
      (page.steps ?? page.pairs)?.filter(({ choices }) => choices.some(({ chosen }) => chosen)).length ??
      (page.options ?? page.places)?.filter(({ chosen }) => chosen).length;
    expect(kept).toBe({ single: 1, several: 4, order: 4, pairs: 3, place: 1 }[kind]);
  });
});

describe('several that may be true', () => {
  it('score the share of statements judged right', () => {
    expect(scoreOf('several', 1, { ...rightWords.several, 'Two is even': 'f' })).toBe(0.75);
    expect(scoreOf('several', 1, { 'Two is even': 'f', 'Three is even': 't', 'Four is even': 'f', 'Five is even': 't' })).toBe(0);
  });

  it('name by their letters the statements not judged yet', () => {
    const task = taskOf(shown('several', 2), 'several');
    const judged = task.statements[0];
    const reading = readEntry(task, parts({ [judged?.place ?? 0]: 't' }));
    expect(reading).toMatchObject({ why: 'Say of every statement whether it is true. Not judged yet: B, C and D.' });
  });

  it('show which statements hold and which were judged wrong', () => {
    const task = shown('several', 2);
    const page = answeredPart(task, null, 'tttt');
    expect(page.statements?.map(({ text, holds, judged, said }) => `${text} ${holds} ${judged} ${said}`).sort()).toEqual([
      'Five is even false no False, and you said true',
      'Four is even true yes True, as you said',
      'Three is even false no False, and you said true',
      'Two is even true yes True, as you said',
    ]);
    const key = answeredPart(task, null, null);
    expect(key.statements?.every(({ judged, said }) => judged === null && (said === 'True' || said === 'False'))).toBe(true);
    expect(scoreWords(task, 0.5)).toBe('2 of 4 statements are judged right.');
  });
});

describe('steps to put in order', () => {
  const withOrder = (...order: string[]) => Object.fromEntries(order.map((text, index) => [text, String(index + 1)]));
  const [read, open, watch, connect] = [
    'Read the maker’s instructions',
    'Open the window',
    'Take off your watch',
    'Connect the charger',
  ] as const;

  it('are right either way where two may change places', () => {
    expect(scoreOf('order', 1, withOrder(read, watch, open, connect))).toBe(1);
  });

  it('score the pairs that stand the right way round, counted by hand', () => {
    // Pairs with an order: read-open, read-watch, read-connect, open-connect, watch-connect. Five.
    expect(scoreOf('order', 1, withOrder(connect, watch, open, read))).toBe(0);
    expect(scoreOf('order', 1, withOrder(open, read, watch, connect))).toBeCloseTo(4 / 5, 12);
    expect(scoreOf('order', 1, withOrder(read, connect, open, watch))).toBeCloseTo(3 / 5, 12);
  });

  it('are never shown in a right order', () => {
    for (const seed of seeds) {
      const task = taskOf(shown('order', seed), 'order');
      expect(markGiven(task, task.steps.map(({ place }) => place).join(','))?.right).toBe(false);
    }
  });

  it('ask again when two share a place, naming them', () => {
    const reading = readEntry(shown('order', 4), parts({ 0: '1', 1: '3', 2: '3', 3: '2' }));
    expect(reading).toMatchObject({ why: 'Steps B and C have the same place, 3. Give each place once.' });
  });

  it('show the right order with the place each was given', () => {
    const page = answeredPart(shown('order', 4), null, '1,0,2,3');
    expect(page.steps?.map(({ text, yours, moved }) => [text, yours, moved])).toEqual([
      [read, 2, true],
      [open, 1, true],
      [watch, 3, false],
      [connect, 4, false],
    ]);
  });
});

describe('pairs to match', () => {
  it('score the share matched right, and let one right-hand text serve twice', () => {
    expect(scoreOf('pairs', 1, { ...rightWords.pairs, Current: 'kilogram' })).toBeCloseTo(2 / 3, 12);
  });

  it('show what was chosen beside what goes there, and what goes with nothing', () => {
    const page = answeredPart(shown('pairs', 6), null, '0,2,1');
    const byLeft = new Map(page.pairs?.map(({ text, key, yours, right }) => [text, [key, yours, right]]));
    expect(byLeft.get('Voltage')).toEqual(['volt', 'volt', true]);
    expect(byLeft.get('Current')).toEqual(['ampere', 'kilogram', false]);
    expect(byLeft.get('Potential difference')).toEqual(['volt', 'ampere', false]);
    expect(page.spare).toEqual([{ text: 'kilogram', why: 'That is mass.' }]);
  });
});

describe('a place to mark', () => {
  it('has a lettered mark for each place, and no names on the drawing before the answer', () => {
    const before = askedPart('', shown('place', 1), null, emptyEntry, null).drawing?.svg ?? '';
    expect(before.match(/<label class="mark" for="place-\d">[ABC]<\/label>/g)).toHaveLength(3);
    expect(before).not.toContain('The box');
    expect(before).not.toContain('>box<');
    const after = answeredPart(shown('place', 1), null, '0').drawing?.svg ?? '';
    expect(after).toContain('<title>The box</title>');
    expect(after).toContain('class="mark yes"');
    expect(after).toContain('class="mark no"');
  });

  it('names the place in the words of the key', () => {
    expect(keyWords(shown('place', 1))).toBe('It is B: The ball.');
  });
});
