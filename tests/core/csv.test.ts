import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { writeCsv } from '../../src/core/csv.js';

/** Tables that are taken away: RFC 4180, and nothing in them that a spreadsheet would run (OWASP, CSV Injection). */

const cellsOf = (text: string): string[][] => parse(text, { record_delimiter: '\r\n', relax_column_count: true }) as string[][];

describe('a cell', () => {
  it.each([
    ['=1+1', "'=1+1"],
    ['@SUM(1)', "'@SUM(1)"],
    ['+cmd', "'+cmd"],
    ['-2+3', "'-2+3"],
    ["=cmd|'/C calc'!A1", "'=cmd|'/C calc'!A1"],
    ['\t=1', "'\t=1"],
    ['\r=1', "'\r=1"],
    ['\n=1', "'\n=1"],
    // Some spreadsheets take the wide signs of Chinese and Japanese keyboards for the plain ones.
    ['＝1+1', "'＝1+1"],
    ['＋1', "'＋1"],
    ['－1a', "'－1a"],
    ['＠SUM(1)', "'＠SUM(1)"],
    ['-3', '-3'],
    ['+44', '+44'],
    ['-0.25', '-0.25'],
    ['a"b', 'a"b'],
    ['a\r\nb', 'a\r\nb'],
    ['Ada, of the hut; and "others"', 'Ada, of the hut; and "others"'],
    ['', ''],
  ])('%j is read back as %j', (cell, read) => {
    expect(cellsOf(writeCsv([['first', cell, 'last']]))).toEqual([['first', read, 'last']]);
  });

  it('cannot begin a new cell or row that would be run, whatever is in it', () => {
    const sign = fc.constantFrom(...'=+-@\t\r\n",;\'|!()', '＝', '1', 'a', ' ');
    const text = fc.oneof(
      fc.array(sign, { maxLength: 12 }).map((signs) => signs.join('')),
      fc.string({ unit: 'binary', maxLength: 20 }),
    );
    let looked = 0;
    fc.assert(
      fc.property(fc.array(fc.array(text, { minLength: 3, maxLength: 3 }), { minLength: 1, maxLength: 4 }), (rows) => {
        const read = cellsOf(writeCsv(rows));
        expect(read.map((cells) => cells.length)).toEqual(rows.map(() => 3));
        for (const [row, cells] of read.entries()) {
          for (const [column, cell] of cells.entries()) {
            const given = rows[row]?.[column] ?? '';
            expect([given, `'${given}`]).toContain(cell);
            if (/^[=+\-@\t\r\n＝＋－＠]/.test(cell)) expect(Number.isFinite(Number(cell))).toBe(true);
            looked += 1;
          }
        }
      }),
      { seed: 20261128, numRuns: 300 },
    );
    expect(looked).toBeGreaterThan(900);
  });
});
