import { readResponses } from '../core/analysis/read-responses.js';
import type { Responses } from '../core/analysis/responses.js';
import { decodeFile, readTable, type TableLimits, type TableRow } from '../platform/csv-table.js';

/** Answers and key as CSV: what `rungwise analyse` and the page take. */

export interface AnswerTables {
  answers: Uint8Array | string;
  /** Null where the answers are 0 and 1. */
  key: Uint8Array | string | null;
}

/** A place in one of the two tables where something is wrong; no line where it is the table as a whole. */
export interface PlacedFault {
  table: 'answers' | 'key';
  line: number | null;
  why: string;
}

export interface AnswerLimits {
  table: TableLimits;
  /** Of one of the two. */
  bytes: number;
  /** Candidates times questions. */
  cells: number;
}

export function readAnswers({ answers, key }: AnswerTables, limits: AnswerLimits): { responses: Responses } | { faults: PlacedFault[] } {
  const [answerRows, keyRows] = [rowsOf('answers', answers, limits), key === null ? { rows: null } : rowsOf('key', key, limits)];
  if ('fault' in keyRows) return { faults: [keyRows.fault] };
  if ('fault' in answerRows) return { faults: [answerRows.fault] };
  return readResponses(answerRows.rows, keyRows.rows);
}

function rowsOf(
  table: PlacedFault['table'],
  given: Uint8Array | string,
  limits: AnswerLimits,
): { rows: TableRow[] } | { fault: PlacedFault } {
  const fault = (why: string): { fault: PlacedFault } => ({ fault: { table, line: null, why } });
  const size = typeof given === 'string' ? Buffer.byteLength(given) : given.length;
  if (size > limits.bytes) return fault(`This is too much: ${sizeWords(limits.bytes)} is the most.`);
  const read = readTable(typeof given === 'string' ? given : decodeFile(given), limits.table);
  if ('why' in read) return fault(read.why);
  const cells = read.rows.length * (read.rows[0]?.cells.length ?? 0);
  return cells > limits.cells ? fault(`This is too much: ${limits.cells} cells are the most. Take fewer candidates or questions.`) : read;
}

const sizeWords = (bytes: number): string => (bytes < 2 ** 20 ? `${Math.round(bytes / 1024)} kB` : `${Math.round(bytes / 2 ** 20)} MB`);
