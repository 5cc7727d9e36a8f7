import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readLetters } from '../../../src/core/papers/letters.js';

const four = ['A', 'B', 'C', 'D'];
const three = ['A', 'B', 'C'];
const six = ['A', 'B', 'C', 'D', 'E', 'F'];
/** So many questions of four letters. */
const fours = (count: number): string[][] => Array.from({ length: count }, () => four);
const read = (typed: string, count: number): (string | null)[] => {
  const reading = readLetters(typed, fours(count));
  if (!reading.ok) throw new Error(reading.why);
  return reading.choices;
};
const refused = (typed: string, letters: readonly (readonly string[])[]) => {
  const reading = readLetters(typed, letters);
  if (reading.ok) throw new Error(`"${typed.slice(0, 40)}" was read`);
  return reading;
};

describe('the letters of a sheet', () => {
  it.each([
    'ABDA',
    'abda',
    'aBdA',
    'A B D A',
    ' ab da ',
    'A,B,D,A',
    'A, B, D, A',
    'A;B;D;A',
    'ABDA\n',
    'AB\r\nDA',
    'A\tB\tD\tA',
    'A\u00a0B\u00a0D\u00a0A',
  ])('are read from %j', (typed) => {
    expect(read(typed, 4)).toEqual(['A', 'B', 'D', 'A']);
  });

  it.each(['-', '.', '_', '0'])('may have a blank, typed %j, first, last or between', (blank) => {
    expect(read(`${blank}B${blank}${blank}C${blank}`, 6)).toEqual([null, 'B', null, null, 'C', null]);
    expect(read(`${blank} ${blank}`, 2)).toEqual([null, null]);
  });

  it('do not take a space or a comma for a blank', () => {
    expect(refused('A B', fours(3)).why).toContain('2 answers for 3 questions: 1 missing');
    expect(refused('A,,B', fours(3)).why).toContain('2 answers for 3 questions: 1 missing');
  });

  it('may all be missing where nothing is asked', () => {
    expect(readLetters('', [])).toEqual({ ok: true, choices: [] });
  });
});

describe('a wrong number of letters', () => {
  it.each([
    ['ABC', 5, '3 answers for 5 questions: 2 missing'],
    ['', 2, '0 answers for 2 questions: 2 missing'],
    ['AB-DA', 3, '5 answers for 3 questions: 2 too many'],
    ['AAAA', 3, '4 answers for 3 questions: 1 too many'],
    ['AAAA', 0, '4 answers for 0 questions: 4 too many'],
  ])('in %j for %d questions is counted', (typed, count, said) => {
    const { why, faults } = refused(typed, fours(count));
    expect(why).toContain(said);
    expect(faults).toEqual([]);
  });

  it('is told for a very long line too', () => {
    expect(refused('abcd '.repeat(50_000), fours(26)).why).toContain('200000 answers for 26 questions: 199974 too many');
  });
});

describe('a letter that its question does not have', () => {
  it('is told with the number of the question and the letters it has', () => {
    const { why, faults } = refused('ADF', [four, three, six]);
    expect(faults).toEqual([{ question: 2, letter: 'D', letters: three }]);
    expect(why).toBe('Question 2 has no D (A to C).');
  });

  it('is told as a capital, and the others of the same line with it', () => {
    const { why, faults } = refused('e-dz', [four, four, three, six]);
    expect(faults.map(({ question, letter }) => `${question}${letter}`)).toEqual(['1E', '3D', '4Z']);
    expect(why).toBe('Question 1 has no E (A to D); question 3 has no D (A to C); question 4 has no Z (A to F).');
  });

  it('is told of every question, of which the words name three and count the rest', () => {
    const { why, faults } = refused('EEEEE', fours(5));
    expect(faults.map(({ question }) => question)).toEqual([1, 2, 3, 4, 5]);
    expect(why).toContain('question 3 has no E');
    expect(why).not.toContain('question 4');
    expect(why).toContain('and 2 more');
    expect(refused('EEEE', fours(4)).why).toContain('and 1 more');
    expect(refused('EEE', fours(3)).why).not.toContain('more');
  });
});

describe('what is no letter of an answer', () => {
  // Among them a dash, a minus, letters of other alphabets, a full-width A, and an accent that stands by itself.
  it.each(['1', '9', '?', '*', '/', '–', '—', '−', 'É', 'Α', 'А', 'Ａ', '\u0301', '😀', '\u0000', '\u200b', '<', '"'])(
    'is named: %j',
    (sign) => {
      const { why, faults } = refused(`AB${sign}D`, fours(4));
      expect(why).toContain(`“${sign}”`);
      expect(faults).toEqual([]);
    },
  );

  it('is told before a wrong number of letters is', () => {
    expect(refused('1: A', fours(26)).why).toContain('“1”');
  });
});

/** A sheet of questions that have three to six letters, what was chosen, and how somebody may type it. */
const sheets = fc.array(
  fc.record({
    has: fc.integer({ min: 3, max: 6 }),
    at: fc.option(fc.nat({ max: 5 }), { nil: null }),
    small: fc.boolean(),
    blank: fc.constantFrom('-', '.', '_', '0'),
    after: fc.constantFrom('', '', '', ' ', ',', ', ', ';', '\n', '  '),
  }),
  { maxLength: 80 },
);

describe('any line', () => {
  it('that is put together from letters the questions have is read back as it was', () => {
    fc.assert(
      fc.property(sheets, (rows) => {
        const chosen = rows.map(({ has, at }) => (at === null ? null : (six[at % has] as string)));
        const typed = rows
          .map(({ small, blank, after }, i) => `${(small ? chosen[i]?.toLowerCase() : chosen[i]) ?? blank}${after}`)
          .join('');
        expect(
          readLetters(
            typed,
            rows.map(({ has }) => six.slice(0, has)),
          ),
        ).toEqual({ ok: true, choices: chosen });
      }),
      { seed: 20261126, numRuns: 500 },
    );
  });

  it('of whatever signs is read as letters the questions have, or refused with a reason', () => {
    const signs = fc.oneof(
      fc.string({ maxLength: 12 }),
      fc.array(fc.nat({ max: 0xffff }), { maxLength: 8 }).map((codes) => String.fromCharCode(...codes)),
      fc.string({ unit: fc.constantFrom('A', 'b', 'd', 'E', '-', ' '), maxLength: 6 }),
    );
    fc.assert(
      fc.property(signs, fc.integer({ min: 0, max: 6 }), (typed, count) => {
        const reading = readLetters(typed, fours(count));
        if (reading.ok) {
          expect(reading.choices).toHaveLength(count);
          for (const choice of reading.choices) expect([null, ...four]).toContain(choice);
        } else expect(reading.why).toMatch(/\.$/);
      }),
      { seed: 20261126, numRuns: 1000 },
    );
  });
});
