import { CsvError, parse } from 'csv-parse/sync';

/** Tables as spreadsheets save them: RFC 4180, and what programs make of it. */

export interface TableLimits {
  /** Below the header. */
  rows: number;
  columns: number;
  /** Letters of one row. */
  rowSize: number;
  /** What to do with more rows. */
  tooMany: string;
}

export interface TableRow {
  /** Of the text, where the row begins. */
  line: number;
  cells: string[];
}

/** All rows, the header among them; or why the text is no table within the limits. */
export function readTable(text: string, limits: TableLimits): { rows: TableRow[] } | { why: string } {
  let read: { raw: string; record: string[] }[];
  try {
    read = parse(text, {
      bom: true,
      delimiter: delimiterOf(text),
      record_delimiter: ['\r\n', '\n', '\r'],
      relax_column_count: true,
      relax_quotes: true,
      max_record_size: limits.rowSize,
      trim: true,
      raw: true,
      // One more than there may be tells that there are too many.
      to: limits.rows + 2,
    }) as unknown as typeof read;
  } catch (error) {
    if (error instanceof CsvError) return { why: faultOf(error) };
    throw error;
  }
  if (read.length > limits.rows + 1) return { why: `There are more than ${limits.rows} rows. ${limits.tooMany}` };
  const widest = Math.max(0, ...read.map(({ record }) => record.length));
  if (widest > limits.columns) return { why: `A row has ${widest} columns; ${limits.columns} are the most.` };
  return { rows: withLines(read) };
}

/** The reader's own count of lines takes CR LF inside a cell for two. */
function withLines(read: readonly { raw: string; record: string[] }[]): TableRow[] {
  let line = 1;
  return read.map(({ raw, record }) => {
    const row = { line, cells: record };
    line += 1 + (raw.replace(/(\r\n|\n|\r)$/, '').match(/\r\n|\n|\r/g)?.length ?? 0);
    return row;
  });
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
