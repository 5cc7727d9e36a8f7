import { writeCsv } from '../core/csv.js';
import { checkRows, type KnownPaper, type RowsChecked } from '../core/papers/result-rows.js';
import { readTable } from '../platform/csv-table.js';
import type { ResultRow } from './entry-store.js';

/** Results as a spreadsheet takes and gives them (RFC 4180, and what programs make of it). */

/** A row may be longer than 250 columns of a word each. */
const limits = { rows: 300, columns: 250, rowSize: 16_000, tooMany: 'Send them in two parts.' };
export const mostBytes = 256 * 1024;

/** Rows of a text, checked against the paper; or why the text is no such table. */
export function readResults(text: string, known: KnownPaper): RowsChecked {
  if (Buffer.byteLength(text) > mostBytes) return { why: 'This is too much: a table of results has 256 kB at most.' };
  const table = readTable(text, limits);
  return 'why' in table
    ? table
    : checkRows(
        table.rows.map(({ cells }) => cells),
        known,
      );
}

/** The table of results; the reader above takes it back. A blank is an empty cell. */
export function writeResults(results: readonly ResultRow[], questions: number): string {
  const numbers = Array.from({ length: questions }, (_, index) => String(index + 1));
  const header = ['candidate', 'version', 'right', 'passed', ...numbers];
  const rows = results.map(({ name, version, right, passed, choices }) => [
    name,
    String(version),
    String(right),
    passed ? 'yes' : 'no',
    ...numbers.map((number) => choices[number] ?? ''),
  ]);
  return writeCsv([header, ...rows]);
}
