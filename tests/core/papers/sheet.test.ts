import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { acceptNumber, draw } from '../../../src/core/families/draw.js';
import {
  fitsSheet,
  keyLetter,
  lettersOf,
  mostLetters,
  paperKinds,
  sheetFamily,
  sheetFixed,
  sheetSeed,
  valueOfLetter,
  type SheetTask,
} from '../../../src/core/papers/sheet.js';
import { fixedQuestionSchema, kindNames, type FixedQuestion, type SingleQuestion } from '../../../src/core/questions/schema.js';
import { randomFrom } from '../../../src/core/random.js';
import { markGiven } from '../../../src/core/tasks/index.js';
import { sampleOf, twoShapes } from '../../support/kind-samples.js';
import { byHand } from '../families/by-hand.js';
import { inventedCompiled, invented } from '../families/invented.js';
import { variants } from '../families/shipped.js';

const seeds = Array.from({ length: 200 }, (_, seed) => seed);
const alphabet = ['A', 'B', 'C', 'D', 'E', 'F'];

/** What is amiss with the letters of a task, whatever it is; by the marking that the hand-in uses. */
function letterFaults(task: SheetTask): string[] {
  const letters = lettersOf(task);
  const values = letters.map((letter) => valueOfLetter(task, letter));
  const right = letters.filter((_, index) => markGiven(task, values[index] ?? '')?.right);
  return [
    ...(letters.length >= 3 && letters.length <= 6 && letters.join() === alphabet.slice(0, letters.length).join() ? [] : ['letters']),
    ...(values.includes(null) || new Set(values).size !== letters.length ? ['values'] : []),
    ...(right.length === 1 && right[0] === keyLetter(task) ? [] : [`right are ${right.join()}, the key is ${keyLetter(task)}`]),
    ...['G', 'Z', '@', '-', '', 'a', '0', '1', alphabet[letters.length] ?? 'H']
      .filter((letter) => valueOfLetter(task, letter) !== null)
      .map((letter) => `has a ${letter}`),
  ];
}

/** The number an option prints, read from its words. */
const printed = (text: string): number => Number(/^[-−]?[\d.]+/.exec(text)?.[0]?.replace('−', '-') ?? Number.NaN);

describe('a shipped family on a sheet', () => {
  // The review of the families found three believable wrong values in every numeric draw, so that all of them fit.
  it.each(variants)('%s in %s has a seed that can be put, the same for the same chance', (_id, _region, compiled) => {
    expect(fitsSheet(compiled)).toBe(true);
    for (const chance of [1, 2, 3]) {
      const seed = sheetSeed(compiled, randomFrom(chance)) ?? Number.NaN;
      expect(Number.isInteger(seed) && seed >= 0 && seed < 2 ** 31).toBe(true);
      expect(sheetFamily(compiled, seed)).not.toBeNull();
      expect(sheetSeed(compiled, randomFrom(chance))).toBe(seed);
    }
  });

  it.each(variants)(
    '%s in %s has one key under whatever seed, which is the answer found by hand, and numbers in order of size',
    (id, region, compiled) => {
      for (const seed of seeds.slice(0, 50)) {
        const task = sheetFamily(compiled, seed);
        if (task === null) throw new Error(`seed ${seed} cannot be put`);
        expect([seed, ...letterFaults(task)]).toEqual([seed]);
        expect(task.options.filter(({ key }) => key)).toHaveLength(1);
        const numbers = task.options.map(({ text }) => printed(text));
        for (const [i, number] of numbers.entries()) if (i > 0) expect(number).toBeGreaterThan(numbers[i - 1] ?? Number.NaN);
        const inputs = Object.fromEntries(Object.entries(task.draw?.inputs ?? {}).map(([name, { value }]) => [name, value]));
        const exact = byHand[id]?.(inputs, region) ?? Number.NaN;
        const away = numbers.map((number) => Math.abs(number - exact));
        expect(lettersOf(task)[away.indexOf(Math.min(...away))]).toBe(keyLetter(task));
      }
    },
  );

  it.each(variants.filter(([, , compiled]) => compiled.variant.answer.kind === 'number'))(
    '%s in %s offers four numbers to choose from, of which a person who types would have one right',
    (_id, _region, compiled) => {
      for (const seed of seeds.slice(0, 50)) {
        const task = sheetFamily(compiled, seed);
        const drawn = draw(compiled, seed);
        const numbers = task?.options.map(({ text }) => printed(text)) ?? [];
        expect(numbers).toHaveLength(4);
        expect(numbers.filter((number) => acceptNumber(drawn, number))).toHaveLength(1);
      }
    },
  );

  it.each(variants)('%s in %s names a mistake for each letter that was put for one, and one that prints so', (_id, _region, compiled) => {
    for (const seed of seeds.slice(0, 50)) {
      const task = sheetFamily(compiled, seed);
      for (const { value, text, why } of task?.options ?? []) {
        if (task === null || why === '') continue;
        const [tale] = markGiven(task, value)?.tellTales ?? [];
        // Rounding to two figures moves a number by a twentieth at most.
        expect(Math.abs(printed(text) / (tale?.value ?? Number.NaN) - 1)).toBeLessThanOrEqual(0.05);
      }
    }
  });

  it('has the story and the numbers of a round with the same seed', () => {
    for (const [, , compiled] of variants) {
      const task = sheetFamily(compiled, 12);
      expect([task?.stem, task?.draw]).toEqual([draw(compiled, 12).stem, draw(compiled, 12)]);
    }
  });
});

// I = P / V with V = 230 V. Multiplied, it is 52,900 times too much, which nobody would believe among four.
describe('an invented family on a sheet', () => {
  const tales = (third: string, minWrong: number) => {
    const own = invented()['tellTales'] as { name: string; expr: string }[];
    return { minWrong, tellTales: own.map((tale) => (tale.name === 'multiplied' ? { ...tale, name: 'third', expr: third } : tale)) };
  };

  it('cannot be put where no draw has three mistakes to choose from', () => {
    const compiled = inventedCompiled();
    expect(sheetFamily(compiled, 1)).toBeNull();
    expect(sheetSeed(compiled, randomFrom(1))).toBeNull();
    expect(fitsSheet(compiled)).toBe(false);
  });

  it('offers the answer among its mistakes, in order of size', () => {
    const compiled = inventedCompiled({ ...tales('3 * P / V', 3), inputs: { P: { label: 'power', unit: 'W', choices: [1000] } } });
    const task = sheetFamily(compiled, 1);
    // 1000 / 230 = 4.348; half of it 2.174, twice 8.696, three times 13.043.
    expect(task?.options.map(({ text }) => text)).toEqual(['2.17 A', '4.35 A', '8.7 A', '13.04 A']);
    expect(task === null ? '' : keyLetter(task)).toBe('B');
  });

  it('gets a seed with three mistakes to choose from, where only some have them', () => {
    // P × P / V / 1000 is the answer itself at 1000 W, twice at 2000 W, half at 500 W, and a mistake of its own at any other power.
    const compiled = inventedCompiled(tales('P * P / V / 1000', 2));
    const powerOf = (seed: number): number => draw(compiled, seed).inputs['P']?.value ?? Number.NaN;
    const without = seeds.filter((seed) => sheetFamily(compiled, seed) === null);
    expect(without).toEqual(seeds.filter((seed) => [500, 1000, 2000].includes(powerOf(seed))));
    expect(without.length).toBeGreaterThan(0);
    for (const chance of seeds) {
      const seed = sheetSeed(compiled, randomFrom(chance)) ?? Number.NaN;
      expect(Number.isInteger(seed)).toBe(true);
      expect([500, 1000, 2000]).not.toContain(powerOf(seed));
    }
  });
});

const single = (changes: Partial<SingleQuestion> = {}): SingleQuestion => ({ ...sampleOf('single'), ...changes });
const textsOf = (question: FixedQuestion, seed: number): string => {
  const task = sheetFixed(question, seed, null);
  return task.kind === 'choice' ? task.options.map(({ text }) => text).join('|') : '';
};

describe('a fixed question on a sheet', () => {
  it('stands in every order over many seeds, and its key under the letter of that order', () => {
    const many = Array.from({ length: 500 }, (_, seed) => seed);
    expect(new Set(many.map((seed) => textsOf(single(), seed))).size).toBe(24); // 4 × 3 × 2 × 1
    for (const seed of many) {
      const task = sheetFixed(single(), seed, null);
      expect(letterFaults(task)).toEqual([]);
      expect(alphabet.indexOf(keyLetter(task))).toBe(textsOf(single(), seed).split('|').indexOf('Alpha'));
      expect(valueOfLetter(task, keyLetter(task))).toBe('0'); // its place in the pack
    }
  });

  it('stays as written where its order is fixed', () => {
    const fixed = single({ order: 'fixed' });
    for (const seed of seeds) expect(textsOf(fixed, seed)).toBe('Alpha|Bravo|Charlie|Delta');
    expect(keyLetter(sheetFixed(fixed, 5, null))).toBe('A');
  });

  it.each([
    'Both of these',
    'All of the above',
    'None of these',
    'Neither of them',
    'Both A and B',
    'Either of the above',
    'all of the above',
  ])('stays as written where an option says “%s”', (text) => {
    const options = [
      { text: 'Alpha', why: 'One.' },
      { text: 'Bravo', why: 'One.' },
      { text, key: true as const },
      { text: 'Delta', why: 'No.' },
    ];
    for (const seed of seeds) expect(textsOf(single({ options }), seed)).toBe(`Alpha|Bravo|${text}|Delta`);
    expect(keyLetter(sheetFixed(single({ options }), 3, null))).toBe('C');
  });

  it('on places keeps the letters that go with how they lie on the drawing', () => {
    for (const seed of seeds) {
      const task = sheetFixed(sampleOf('place'), seed, twoShapes);
      expect([lettersOf(task).join(''), keyLetter(task), valueOfLetter(task, 'B')]).toEqual(['ABC', 'B', '1']);
      expect(letterFaults(task)).toEqual([]);
    }
  });

  it('on places cannot be put without its drawing', () => {
    expect(() => sheetFixed(sampleOf('place'), 1, null)).toThrow('two-shapes');
  });

  it.each(['several', 'order', 'pairs'] as const)('of the kind %s takes more than one letter and is refused by its name', (kind) => {
    expect(() => sheetFixed(sampleOf(kind), 1, null)).toThrow(sampleOf(kind).id);
  });

  it('is of a kind that is listed for papers exactly when one letter answers it', () => {
    const kinds = Object.keys(kindNames).filter((kind) => !['several', 'order', 'pairs'].includes(kind));
    expect([...paperKinds].sort()).toEqual(kinds.sort());
    expect(mostLetters).toBe(alphabet.length);
  });
});

describe('the shipped questions of one best answer', () => {
  const folder = new URL('../../../question-packs/entry-safety/questions/', import.meta.url);
  const questions = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.yaml'))
    .flatMap((file) => (parse(readFileSync(new URL(file, folder), 'utf8')) as { questions: unknown[] }).questions)
    .map((question) => fixedQuestionSchema.parse(question))
    .filter((question): question is SingleQuestion => question.kind === 'single');

  it('have their key under the letter that the sheet says', () => {
    expect(questions.length).toBeGreaterThan(100);
    for (const question of questions) {
      const right = question.options.find(({ key }) => key)?.text ?? '';
      for (const seed of seeds.slice(0, 20)) {
        const task = sheetFixed(question, seed, null);
        expect([question.id, ...letterFaults(task)]).toEqual([question.id]);
        expect(textsOf(question, seed).split('|').indexOf(right)).toBe(alphabet.indexOf(keyLetter(task)));
      }
    }
  });
});
