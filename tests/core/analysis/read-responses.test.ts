import { describe, expect, it } from 'vitest';
import { readResponses } from '../../../src/core/analysis/read-responses.js';
import { rowsOf } from '../../support/item-analysis.js';

/** A table of answers and its key, row by row. */

const key = 'item,key,options\nq1,A,A B C\nq2,C,A B C';
const read = (answers: string, given: string | null = null) => readResponses(rowsOf(answers), given === null ? null : rowsOf(given));

function faults(answers: string, given: string | null = null): string[] {
  const done = read(answers, given);
  return 'faults' in done ? done.faults.map(({ table, line, why }) => `${table} ${line}: ${why}`) : ['none'];
}

describe('a table of answers', () => {
  it('is read with its key, blanks and empty rows as they come, the key in another order', () => {
    expect(read('Candidate,q1,q2\nOdo,A,b\n,,\nTansy, ,C\n,B,', 'key,note,item,options\nC,x,q2,A B C\nA,y,q1,A B  C')).toEqual({
      responses: {
        questions: [
          { id: 'q1', key: expect.objectContaining({ right: 'A', options: ['A', 'B', 'C'] }) },
          { id: 'q2', key: expect.objectContaining({ right: 'C', options: ['A', 'B', 'C'] }) },
        ],
        rows: [
          ['A', 'B'],
          [null, 'C'],
          ['B', null],
        ],
      },
    });
  });

  it('is read as right and wrong without a key', () => {
    expect(read('candidate,q1,q2\nOdo,1,0\nTansy,,1')).toMatchObject({
      responses: {
        questions: [
          { id: 'q1', key: null },
          { id: 'q2', key: null },
        ],
        rows: [
          ['1', '0'],
          [null, '1'],
        ],
      },
    });
  });

  it('may have nobody in it', () => expect(read('candidate,q1')).toMatchObject({ responses: { rows: [] } }));

  it('keeps options apart that differ in nothing but capitals', () => {
    const own = 'item,key,options\nq1,a,a A';
    expect(read('candidate,q1\nOdo,A\nTansy,a', own)).toMatchObject({ responses: { rows: [['A'], ['a']] } });
  });
});

describe('a fault', () => {
  it.each([
    ['', 'The first row names the columns, and the first of them is candidate: candidate,q1,q2 and so on.'],
    ['name,q1\nOdo,1', 'The first row names the columns, and the first of them is candidate: candidate,q1,q2 and so on.'],
    ['candidate\nOdo', 'There is no column for a question after candidate.'],
    ['candidate,q1,\nOdo,1,0', 'Column 3 has no name.'],
    ['candidate,q1,q1\nOdo,1,0', 'There are two columns “q1”.'],
  ])('of the header is named: %j', (answers, why) => expect(faults(answers)).toEqual([`answers 1: ${why}`]));

  it('of a row is named with its line', () => {
    expect(faults('candidate,q1,q2\nOdo,1,0\nTansy,1\nWilf,1,B\nOdo,0,0')).toEqual([
      'answers 3: This row has 1 answers for 2 questions. A blank is an empty cell.',
      'answers 4: “q2” has “B”. Without a key each cell is 1 for right, 0 for wrong, or blank: give the key as well.',
      'answers 5: “Odo” is in line 2 already: each candidate has one row.',
    ]);
    expect(faults('candidate,q1,q2\nOdo,A,E', key)).toEqual(['answers 2: “q2” has “E”; its options are A B C.']);
  });

  it('of the key is named with its line', () => {
    expect(faults('candidate,q1\nOdo,A', 'question,key\nq1,A')).toEqual([
      'key 1: The first row of the key names its columns: item,key,options.',
    ]);
    expect(faults('candidate,q1\nOdo,A', 'item,key,options\nq1,D,A B C\n,A,A B\nq2,A,A\nq3,A,A A B\nq4,A,A B\nq4,A,A B')).toEqual([
      'key 2: The key of “q1” is “D”, which is none of its options A B C.',
      'key 3: This row names no question.',
      'key 4: “q2” needs its options, parted by spaces, such as A B C D.',
      'key 5: “q3” has an option twice.',
      'key 7: “q4” is here twice.',
    ]);
  });

  it('is a question that only one of the two tables has', () => {
    expect(faults('candidate,q1,q3\nOdo,A,A', key)).toEqual([
      'answers 1: The key has no row for “q3”.',
      'key 3: The answers have no column “q2”.',
    ]);
  });

  it('stands among twenty at most', () => {
    const many = Array.from({ length: 60 }, (_, index) => `C${index},x`).join('\n');
    expect(faults(`candidate,q1\n${many}`)).toHaveLength(20);
  });
});
