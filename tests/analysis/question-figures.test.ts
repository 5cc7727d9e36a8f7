import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Person } from '../../src/accounts/index.js';
import { questionFiguresService, type QuestionFiguresService } from '../../src/analysis/index.js';
import { fisherInterval } from '../../src/core/analysis/correlation.js';
import { packsService } from '../../src/packs/index.js';
import { questionsService } from '../../src/questions/index.js';
import { enrolAll } from '../../src/study/index.js';
import { testApp, type TestApp } from '../support/app.js';
import { addClass, addPeople, personNamed, recordAnswers, widerPack, type AnswerGiven } from '../support/recorded-answers.js';
import { staffOf } from '../support/staff.js';

/** Figures of questions from the record of answers, held against tables written by hand. */

let app: TestApp;
let figures: QuestionFiguresService;
let tutor: Person;
const pack = widerPack(11);

/** Twelve people by twelve questions; the letter is the option: k for the key, then a, b, c; a dot where it was not answered. */
const table = [
  'kkkkkkkkkkka',
  'kkkkkkkkakka',
  'kkkkakkkkkbk',
  'kkkkkkbkkaka',
  'kkakkkkkbkka',
  'kkkkkbkkaakb',
  'akkbkkkkakkk',
  'kkbkkakkbaak',
  'kakkabkkaakk',
  'akbkaakbkakk',
  'aaabkkkbaaak',
  'kabaabakabak',
  // Answered only nine others: too few to be held against them.
  'kkkkkk..kkkk',
];
const codes = ['AA-01-001', ...Array.from({ length: 11 }, (_, index) => `AA-01-${index + 101}`)];
const options = 'kabc';

const rowsOf = (people: readonly number[], lines: readonly string[]): AnswerGiven[] =>
  lines.flatMap((line, row) =>
    [...line].flatMap((letter, column) =>
      letter === '.'
        ? []
        : [{ person: people[row] ?? 0, code: codes[column] ?? '', given: String(options.indexOf(letter)), right: letter === 'k' }],
    ),
  );

let classId: number;
const idOf = async (code: string): Promise<number> =>
  (await app.rows<{ id: number }>('SELECT id FROM question WHERE code = $1', [code]))[0]?.id ?? 0;
const one = async (code: string, of: 'class' | 'club' | 'all' = 'class') => await figures.one(tutor, classId, await idOf(code), of);
async function figuresOf(code: string) {
  const { seen } = await one(code);
  if (seen === null) throw new Error(`the figures of ${code} are hidden`);
  return seen.figures;
}

beforeAll(async () => {
  app = await testApp({ pack });
  await staffOf(app);
  tutor = { id: await personNamed(app, 'Tessa'), role: 'tutor', region: 'uk', timeZone: 'Europe/London', displayName: 'Tessa' } as Person;
  figures = questionFiguresService({ db: app.db, clock: app.clock, questions: questionsService({ db: app.db, clock: app.clock }) });
  const people = await addPeople(app, table.length);
  classId = await addClass(app, 'Thursday', [tutor.id], people);
  await recordAnswers(app, rowsOf(people, table));
});
afterAll(() => app.close());

/** r of a column with the rest, in whole numbers: all have answered the eleven others, so elevenths of shares may be left out. */
function byHand(column: number, letter: string): number {
  const lines = table.slice(0, 12);
  const x = lines.map((line) => (line[column] === letter ? 1 : 0));
  const y = lines.map((line) => [...line].filter((mark, other) => other !== column && mark === 'k').length);
  const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
  const products = (a: readonly number[], b: readonly number[]): number => sum(a.map((value, index) => value * (b[index] ?? 0)));
  const n = lines.length;
  const above = n * products(x, y) - sum(x) * sum(y);
  return above / Math.sqrt((n * products(x, x) - sum(x) ** 2) * (n * products(y, y) - sum(y) ** 2));
}

describe('the figures of a question', () => {
  it('are those worked out by hand for the last question of the table, which the strong have wrong', async () => {
    // Down the last column: a a k a a b k k k k k k k, so 8 of 13 are right. Of the first twelve 7 are; their rests, counted along the
    // rows without the last column, are 11 10 9 9 9 8 8 6 6 5 3 2 (of eleven): Σy = 86, Σy² = 702, and over the seven who are right
    // (rows 3, 7 to 12: 9 8 6 6 5 3 2) Σxy = 39. r = (12·39 - 7·86) / √((12·7 - 7²)(12·702 - 86²)) = -134 / √(35·1028).
    const last = await figuresOf('AA-01-111');
    expect([last.n, last.right, last.held]).toEqual([13, 8, 12]);
    expect(last.itemRest).toBeCloseTo(-134 / Math.sqrt(35 * 1028), 12);
    expect(last.itemRestInterval).toEqual(fisherInterval(last.itemRest, 12));
  });

  it.each(codes.map((code, column) => [code, column] as const))(
    'are those of whole numbers for %s and all its options',
    async (code, column) => {
      const found = await figuresOf(code);
      const marks = table.map((line) => line[column]);
      expect(found.n).toBe(marks.filter((mark) => mark !== '.').length);
      expect(found.right).toBe(marks.filter((mark) => mark === 'k').length);
      for (const [value, letter] of [...options].entries()) {
        const choice = found.choices.find((each) => each.value === String(value));
        expect(choice?.people).toBe(marks.filter((mark) => mark === letter).length);
        const hand = byHand(column, letter);
        if (Number.isNaN(hand)) expect(choice?.rest).toBeNull();
        else expect(choice?.rest).toBeCloseTo(hand, 12);
      }
    },
  );

  it('have an upper and a lower group of 27 %, ties included', async () => {
    // 27 % of 12 is 3.24, so 3. For the last question the rests are 11 10 9 9 9 8 8 6 6 5 3 2: the third highest is 9, which five reach
    // (rows 1 to 5, of whom row 3 is right); the third lowest is 5, and 5 3 2 lie at or below it (rows 10, 11 and 12, all right).
    expect((await figuresOf('AA-01-111')).groups).toEqual({ upper: { right: 1, of: 5 }, lower: { right: 3, of: 3 } });
  });

  it('of a list and of a single page are the same', async () => {
    const list = await figures.list(tutor, classId, 'class');
    const listed = [...list.look, ...list.sound, ...list.tooFew];
    expect(listed.map(({ outline }) => outline.code).sort()).toEqual([...codes].sort());
    for (const { outline, figures: one } of listed) {
      const alone = await figuresOf(outline.code);
      expect([one.n, one.right, one.held, one.certainty, one.later]).toEqual([
        alone.n,
        alone.right,
        alone.held,
        alone.certainty,
        alone.later,
      ]);
      expect(one.itemRest ?? 0).toBeCloseTo(alone.itemRest ?? 0, 12);
      expect(one.choices.map(({ value, people }) => [value, people])).toEqual(alone.choices.map(({ value, people }) => [value, people]));
    }
  });
});

describe('repeated answers', () => {
  it('are counted apart from the first, which stays as it was', async () => {
    const [person] = await addPeople(app, 1);
    const other = await addClass(app, 'Apart', [tutor.id], [person ?? 0]);
    const answer = { person: person ?? 0, code: 'BB-01-001', certainty: 'sure' as const };
    await recordAnswers(app, [
      { ...answer, given: '2', right: false },
      { ...answer, given: '0', right: true },
    ]);
    await recordAnswers(app, [{ ...answer, given: '0', right: true }]);
    const { seen } = await figures.one(tutor, other, await idOf('BB-01-001'), 'class');
    expect(seen?.figures).toMatchObject({ n: 1, right: 0, later: { right: 2, of: 2 }, certainty: { sure: { right: 0, of: 1 } } });
  });
});

describe('a family', () => {
  it('has its mistakes by name in the place of options, and those who said that they did not know', async () => {
    const people = await addPeople(app, 6);
    const other = await addClass(app, 'Numbers', [tutor.id], people);
    const [a, b, c, d, e, f] = people as [number, number, number, number, number, number];
    const wrong = { code: 'nf-twice', right: false };
    await recordAnswers(app, [
      { person: a, code: 'nf-twice', given: '690 W', right: true },
      { ...wrong, person: b, given: '360', tellTale: 'other-supply' },
      { ...wrong, person: c, given: '480', tellTale: 'other-supply' },
      { ...wrong, person: d, given: '77', tellTale: 'divided' },
      { ...wrong, person: e, given: '1' },
      { ...wrong, person: f, given: '' },
    ]);
    const { seen } = await figures.one(tutor, other, await idOf('nf-twice'), 'class');
    expect([seen?.figures.n, seen?.figures.right]).toEqual([6, 1]);
    expect(Object.fromEntries(seen?.figures.choices.map(({ value, people: count }) => [value, count]) ?? [])).toEqual({
      divided: 1,
      'other-supply': 2,
      '+right': 1,
      '+other': 1,
      '': 1,
    });
  });
});

describe('a question with statements', () => {
  it('has each statement counted, and no options that could raise a sign', async () => {
    const people = await addPeople(app, 12);
    const other = await addClass(app, 'Statements', [tutor.id], people);
    // Eleven other questions each, so that the answers can be held against the rest: nine judge all rightly, three call C false.
    await recordAnswers(app, [
      ...people.flatMap((person, row) =>
        codes.slice(1).map((code, column) => ({ person, code, given: '0', right: (row + column) % 3 > 0 })),
      ),
      ...people.map((person, row) => ({ person, code: 'AA-02-101', given: row < 9 ? 'tftf' : 'tfff', right: row < 9 })),
    ]);
    const { seen } = await figures.one(tutor, other, await idOf('AA-02-101'), 'class');
    expect(seen?.figures).toMatchObject({ n: 12, right: 9, held: 12, choices: [] });
    const parts = [...(seen?.parts ?? [])].sort((a, b) => a.place - b.place);
    expect(parts.map(({ right, of }) => [right, of])).toEqual([
      [12, 12],
      [12, 12],
      [9, 12],
      [12, 12],
    ]);
    expect(seen?.verdict.signs).toEqual([]);
  });
});

describe('a new revision', () => {
  const revised = async (change: (question: Record<string, unknown>) => void): Promise<void> => {
    const next = structuredClone(pack);
    const question = next.questions.find(({ id }) => id === 'CC-01-001') as unknown as Record<string, unknown>;
    change(question);
    await packsService({ db: app.db, enrolAll }).load({ ...next, head: { ...next.head, version: `1.${String(question['revision'])}.0` } });
  };
  let people: number[];
  let other: number;
  const now = async () => (await figures.one(tutor, other, await idOf('CC-01-001'), 'class')).seen?.figures;

  beforeAll(async () => {
    people = await addPeople(app, 3);
    other = await addClass(app, 'Revised', [tutor.id], people);
    await recordAnswers(
      app,
      people.map((person, index) => ({ person, code: 'CC-01-001', given: index === 0 ? '0' : '1', right: index === 0 })),
    );
  });

  it('keeps the answers where it says that it asks the same, in its own wording', async () => {
    expect(await now()).toMatchObject({ n: 3, right: 1 });
    await revised((question) => {
      question['revision'] = 2;
      question['sameSince'] = 1;
      question['stem'] = 'The same, said better?';
      question['options'] = [...(question['options'] as object[])].reverse();
    });
    const found = await now();
    expect(found).toMatchObject({ n: 3, right: 1 });
    // The second of four stands third when they are turned round.
    expect(found?.choices.map(({ people: count }) => count)).toEqual([0, 0, 2, 1]);
  });

  it('begins at nought where it does not, and the next answers are first ones again', async () => {
    await revised((question) => {
      question['revision'] = 3;
      question['stem'] = 'Something else?';
    });
    expect(await now()).toMatchObject({ n: 0, right: 0, later: { of: 0 } });
    const answer = { person: people[0] ?? 0, code: 'CC-01-001', revision: 3 };
    await recordAnswers(app, [
      { ...answer, given: '1', right: false },
      { ...answer, given: '0', right: true },
    ]);
    expect(await now()).toMatchObject({ n: 1, right: 0, later: { right: 1, of: 1 } });
  });
});
