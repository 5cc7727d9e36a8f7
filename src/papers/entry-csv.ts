import { CsvError, parse } from 'csv-parse/sync';
import { writeCsv } from '../core/csv.js';
import { checkRows, type KnownPaper, type RowsChecked } from '../core/papers/result-rows.js';
import type { ResultRow } from './entry-store.js';

/** Results as a spreadsheet takes and gives them (RFC 4180, and what programs make of it). */

const mostRows = 300;
const mostColumns = 250;
/** One row: longer than 250 columns of a word each. */
const mostRowSize = 16_000;
export const mostBytes = 256 * 1024;

/** Rows of a text, checked against the paper; or why the text is no such table. */
export function readResults(text: string, known: KnownPaper): RowsChecked {
  if (Buffer.byteLength(text) > mostBytes) return { why: 'This is too much: a table of results has 256 kB at most.' };
  const table = readTable(text);
  return 'why' in table ? table : checkRows(table.rows, known);
}

function readTable(text: string): { rows: string[][] } | { why: string } {
  let rows: string[][];
  try {
    rows = parse(text, {
      bom: true,
      delimiter: delimiterOf(text),
      record_delimiter: ['\r\n', '\n', '\r'],
      relax_column_count: true,
      relax_quotes: true,
      max_record_size: mostRowSize,
      trim: true,
      // One more than there may be tells that there are too many.
      to: mostRows + 2,
    });
  } catch (error) {
    if (error instanceof CsvError) return { why: faultOf(error) };
    throw error;
  }
  if (rows.length > mostRows + 1) return { why: `There are more than ${mostRows} rows. Send them in two parts.` };
  const widest = Math.max(0, ...rows.map(({ length }) => length));
  return widest > mostColumns ? { why: `A row has ${widest} columns; ${mostColumns} are the most.` } : { rows };
}

/** A comma, or what spreadsheets write where the comma parts whole numbers from tenths; a copied range of cells has tabs. */
function delimiterOf(text: string): string {
  const header = /^[^\r\n]*/.exec(text)?.[0] ?? '';
  const counted = [',', ';', '\t'].map((sign) => ({ sign, count: header.split(sign).length }));
  return counted.sort((a, b) => b.count - a.count)[0]?.sign ?? ',';
}

function faultOf(error: CsvError): string {
  const line = typeof error['lines'] === 'number' ? error['lines'] : null;
  const where = line === null ? '' : ` See line ${line}.`;
  if (error.code === 'CSV_QUOTE_NOT_CLOSED') return 'A quotation mark is opened and never closed.';
  if (error.code === 'CSV_MAX_RECORD_SIZE') return `A row is too long; perhaps a quotation mark is not closed.${where}`;
  return `This cannot be read as a table.${where}`;
}

/** A file as text: spreadsheets save UTF-8, UTF-16 with a mark, or what Windows had before. */
export function decodeFile(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
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
