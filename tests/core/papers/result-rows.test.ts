import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkRows, nameFault, tidyName, type CheckedRow, type KnownPaper } from '../../../src/core/papers/result-rows.js';

/** A class of five and a paper of four questions in two versions, the second of which has six letters in its first place. */

const four = ['A', 'B', 'C', 'D'];
const six = [...four, 'E', 'F'];

const known: KnownPaper = {
  letters: [
    [four, four, four.slice(0, 3), four],
    [six, four, four, four],
  ],
  members: [
    { memberId: 1, name: 'Perpetua Moss', hindrance: null },
    { memberId: 2, name: 'Ivo Crackthorn', hindrance: 'is already entered: 3 of 4' },
    { memberId: 3, name: 'Odo', hindrance: null },
    { memberId: 4, name: 'Odo', hindrance: null },
    { memberId: 5, name: 'Zoë', hindrance: null },
  ],
  others: [{ name: 'Wilf', hindrance: 'is already entered: 1 of 4' }],
};

const header = ['candidate', 'version', 'answers'];

function rowsOf(...below: string[][]): CheckedRow[] {
  const checked = checkRows([header, ...below], known);
  if ('why' in checked) throw new Error(checked.why);
  return checked.rows;
}

const whyOf = (table: string[][]): string => {
  const checked = checkRows(table, known);
  return 'why' in checked ? checked.why : '';
};

describe('a clean row', () => {
  it('gives a member by name, whatever its case and spaces, with the version and the letters', () => {
    const [row] = rowsOf(['  perpetua   MOSS ', ' 2 ', 'f b-d']);
    expect(row).toEqual({
      row: 2,
      name: 'Perpetua Moss',
      whys: [],
      doubt: null,
      sheet: { memberId: 1, name: 'Perpetua Moss', version: 2, choices: ['F', 'B', null, 'D'] },
    });
  });

  it('gives a name that no member has as somebody without an account', () => {
    expect(rowsOf(['Sunniva', '1', 'ABCD'])[0]?.sheet).toEqual({
      memberId: null,
      name: 'Sunniva',
      version: 1,
      choices: ['A', 'B', 'C', 'D'],
    });
  });

  it('is in doubt where the name nearly is a member’s', () => {
    const [row] = rowsOf(['Perpetua Mos', '1', 'ABCD']);
    expect([row?.whys, row?.doubt]).toEqual([
      [],
      'No member has this name; Perpetua Moss has nearly the same. It would be entered as somebody without an account.',
    ]);
  });

  it('is found by a letter with its mark apart, and with the dashes that word processors put', () => {
    const [row] = rowsOf(['Zoe\u0308', '1', 'A–C—']);
    expect(row?.sheet).toEqual({ memberId: 5, name: 'Zoë', version: 1, choices: ['A', null, 'C', null] });
  });

  it('may have a column for each question, in any order; an empty cell is a blank, and marks of ours are passed over', () => {
    const checked = checkRows(
      [
        ['Version', 'right', 'passed', '2', 'Q1', '4', '3', 'Candidate'],
        ['2', '4', 'yes', 'b', 'e', '', 'C', 'Perpetua Moss'],
      ],
      known,
    );
    expect('rows' in checked && checked.rows[0]?.sheet?.choices).toEqual(['E', 'B', 'C', null]);
  });

  it('is counted as a spreadsheet does: empty rows have their number', () => {
    expect(rowsOf(['', '', ''], ['Perpetua Moss', '1', 'ABCD'], [' ']).map(({ row }) => row)).toEqual([3]);
  });
});

describe('a row that cannot be imported', () => {
  it.each([
    ['an unknown version', ['Perpetua Moss', '3', 'ABCD'], 'There is no version “3”: the paper has versions 1 to 2.'],
    ['a version in words', ['Perpetua Moss', 'two', 'ABCD'], 'There is no version “two”: the paper has versions 1 to 2.'],
    ['no version', ['Perpetua Moss', '', 'ABCD'], 'The version is missing; it stands on the sheet.'],
    ['a letter that the question does not have', ['Perpetua Moss', '1', 'ABDD'], 'Question 3 has no D (A to C).'],
    ['a sign that is no letter', ['Perpetua Moss', '1', 'AB?D'], '“?” is no letter of an answer. Type - for a blank.'],
    ['missing answers', ['Perpetua Moss', '1', 'ABC'], '3 answers for 4 questions: 1 missing. Type - for a blank.'],
    ['too many answers', ['Perpetua Moss', '1', 'ABCDA'], '5 answers for 4 questions: 1 too many. Type - for a blank.'],
    ['no answers', ['Perpetua Moss', '1', ''], 'There are no answers.'],
    ['no answers at all', ['Perpetua Moss', '1'], 'There are no answers.'],
    ['a cell without a column', ['Perpetua Moss', '1', 'ABCD', 'x'], '1 cell too many: the header has no column for it.'],
    [
      'two members of that name',
      ['odo', '1', 'ABCD'],
      '2 members have this name. Enter their sheets one by one, and choose from the list.',
    ],
    ['a member with a result', ['Ivo Crackthorn', '1', 'ABCD'], 'This candidate is already entered: 3 of 4.'],
    ['a name with a result', ['wilf', '1', 'ABCD'], 'This candidate is already entered: 1 of 4.'],
    ['no name', ['', '1', 'ABCD'], 'The name is missing.'],
  ])('says so of %s', (_what, cells, why) => {
    expect(rowsOf(cells)).toEqual([{ row: 2, name: cells[0]?.trim(), whys: [why], doubt: null, sheet: null }]);
  });

  it('says everything that is wrong with it at once', () => {
    expect(rowsOf(['', '9', 'x'])[0]?.whys).toHaveLength(2);
  });

  it('is each of two for the same candidate', () => {
    const rows = rowsOf(['Sunniva', '1', 'ABCD'], ['Perpetua Moss', '1', 'ABCD'], ['SUNNIVA', '2', 'ABCD']);
    expect(rows.map(({ whys }) => whys)).toEqual([['Row 4 has the same candidate.'], [], ['Row 2 has the same candidate.']]);
  });

  it('says of a column for a question which cell is no letter, and how many are missing at the end', () => {
    const checked = checkRows(
      [
        ['candidate', 'version', '1', '2', '3', '4'],
        ['Perpetua Moss', '1', 'A', 'BC', 'A', 'A'],
        ['Zoë', '1', 'A', 'B', 'C'],
      ],
      known,
    );
    expect('rows' in checked && checked.rows.map(({ whys }) => whys)).toEqual([
      ['Question 2 has “BC”, which is not one letter.'],
      ['3 answers for 4 questions: 1 missing. Type - for a blank.'],
    ]);
  });
});

describe('members without a row', () => {
  it('are said, but for those who have a result', () => {
    const checked = checkRows([header, ['Perpetua Moss', '1', 'ABCD'], ['Sunniva', '1', 'ABCD']], known);
    expect('absent' in checked && checked.absent).toEqual(['Odo', 'Odo', 'Zoë']);
  });
});

describe('a table', () => {
  const columns = 'The columns are candidate, version and answers; or candidate, version, 1, 2, 3 and so on.';
  it.each([
    ['nothing', [], 'There is no row. The first one names the columns: candidate, version, answers.'],
    ['a header alone', [header], 'There is a header and no row below it.'],
    ['no header', [['Perpetua Moss', '1', 'ABCD']], `The header has a column “perpetua moss”. ${columns}`],
    ['no candidates', [['version', 'answers']], `The header has no column “candidate”. ${columns}`],
    ['no answers', [['candidate', 'version']], `The header has no answers. ${columns}`],
    ['answers twice over', [[...header, '1']], `The header has answers twice over. ${columns}`],
    ['a column twice', [[...header, 'Version']], 'The header has “version” twice.'],
    [
      'too few questions',
      [['candidate', 'version', '1', '2', '4']],
      'The header has 3 columns for answers; the paper has questions 1 to 4.',
    ],
    [
      'a question twice',
      [['candidate', 'version', '1', '2', '3', '4', 'q4']],
      'The header has 5 columns for answers; the paper has questions 1 to 4.',
    ],
  ])('with %s is refused as a whole', (_what, table, why) => {
    expect(whyOf(table)).toBe(why);
  });

  it('of any texts whatever is met with words and never with an error; clean rows fit the paper', () => {
    const cell = fc.oneof(
      fc.string({ maxLength: 12 }),
      fc.constantFrom('Odo', 'Zoë', '1', '2', 'ABCD', 'A-CD', 'candidate', 'version', 'answers'),
    );
    fc.assert(
      fc.property(fc.array(fc.array(cell, { maxLength: 6 }), { maxLength: 6 }), fc.boolean(), (table, headed) => {
        const checked = checkRows(headed ? [header, ...table] : table, known);
        expect('why' in checked && checked.why).not.toBe('');
        for (const { sheet, whys } of 'why' in checked ? [] : checked.rows) {
          expect(whys.length > 0).toBe(sheet === null);
          const letters = known.letters[(sheet?.version ?? 1) - 1] ?? [];
          for (const [index, choice] of (sheet?.choices ?? []).entries()) expect([null, ...(letters[index] ?? [])]).toContain(choice);
        }
      }),
    );
  });
});

describe('a name without an account', () => {
  it('is kept in one form, without the apostrophe that keeps a spreadsheet from working it out', () => {
    expect(["'=1+1", "'Tilda", "  O'Hara  the   elder "].map(tidyName)).toEqual(['=1+1', "'Tilda", "O'Hara the elder"]);
  });

  it('is refused when it is empty, too long, or holds what cannot be shown', () => {
    expect([nameFault(''), nameFault('x'.repeat(61)), nameFault('a\u202eb')]).toEqual([
      'The name is missing.',
      'The name is too long: 60 letters are the most.',
      'The name holds a sign that cannot be shown.',
    ]);
    expect(nameFault('x'.repeat(60))).toBeNull();
  });
});
