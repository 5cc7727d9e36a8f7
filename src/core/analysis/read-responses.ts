import { shortened } from '../words.js';
import type { AskedQuestion, Responses } from './responses.js';

/** A table of candidates by questions and its key, row by row, into answers that can be analysed. */

export interface Row {
  /** Where it begins in its file. */
  line: number;
  cells: readonly string[];
}

export interface TableFault {
  /** Which of the two tables. */
  table: 'answers' | 'key';
  line: number;
  why: string;
}

/** More than these nobody reads; what is left shows when they are mended. */
const mostFaults = 20;

/**
 * @param answers `candidate`, then a column a question; below it a row a candidate. Empty rows are passed over.
 * @param key columns `item`, `key`, `options`, the options parted by spaces; null where the answers are 0 and 1
 */
export function readResponses(answers: readonly Row[], key: readonly Row[] | null): { responses: Responses } | { faults: TableFault[] } {
  const keys = key === null ? null : readKey(filled(key));
  if (keys !== null && 'faults' in keys) return { faults: keys.faults.slice(0, mostFaults) };
  const [header, ...below] = filled(answers);
  const columns = readHeader(header, keys);
  if ('faults' in columns) return { faults: columns.faults.slice(0, mostFaults) };
  const faults = nameFaults(below);
  const rows = below.map((row) => readRow(row, columns.questions, faults));
  if (faults.length === 0) return { responses: { questions: columns.questions, rows } };
  return { faults: faults.sort((a, b) => a.line - b.line).slice(0, mostFaults) };
}

const mostOptions = 26;

const filled = (rows: readonly Row[]): Row[] => rows.filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));

type Keys = Map<string, { right: string; options: string[]; line: number }>;

function readKey([header, ...below]: readonly Row[]): { keys: Keys } | { faults: TableFault[] } {
  const fault = (line: number, why: string): TableFault => ({ table: 'key', line, why });
  const names = (header?.cells ?? []).map((cell) => cell.trim().toLowerCase());
  const [item, right, list] = ['item', 'key', 'options'].map((name) => names.indexOf(name)) as [number, number, number];
  if (item < 0 || right < 0 || list < 0)
    return { faults: [fault(header?.line ?? 1, 'The first row of the key names its columns: item,key,options.')] };
  const keys: Keys = new Map();
  const faults: TableFault[] = [];
  for (const { line, cells } of below) {
    const [id, own] = [cells[item]?.trim() ?? '', cells[right]?.trim() ?? ''];
    const options = (cells[list] ?? '').split(/\s+/).filter((option) => option !== '');
    const why = keyFault(id, own, options, keys);
    if (why === null) keys.set(id, { right: own, options, line });
    else faults.push(fault(line, why));
  }
  return faults.length === 0 ? { keys } : { faults };
}

function keyFault(id: string, right: string, options: readonly string[], keys: Keys): string | null {
  if (id === '') return 'This row names no question.';
  if (keys.has(id)) return `“${shortened(id)}” is here twice.`;
  if (options.length < 2) return `“${shortened(id)}” needs its options, parted by spaces, such as A B C D.`;
  if (options.length > mostOptions) return `“${shortened(id)}” has ${options.length} options; ${mostOptions} are the most.`;
  if (new Set(options).size < options.length) return `“${shortened(id)}” has an option twice.`;
  if (!options.includes(right))
    return `The key of “${shortened(id)}” is “${shortened(right)}”, which is none of its options ${shortened(options.join(' '))}.`;
  return null;
}

function readHeader(header: Row | undefined, keys: { keys: Keys } | null): { questions: AskedQuestion[] } | { faults: TableFault[] } {
  const line = header?.line ?? 1;
  const fault = (why: string): TableFault => ({ table: 'answers', line, why });
  const [first = '', ...ids] = (header?.cells ?? []).map((cell) => cell.trim());
  if (first.toLowerCase() !== 'candidate')
    return { faults: [fault('The first row names the columns, and the first of them is candidate: candidate,q1,q2 and so on.')] };
  if (ids.length === 0) return { faults: [fault('There is no column for a question after candidate.')] };
  const faults: TableFault[] = [];
  const known = new Set<string>();
  for (const [place, id] of ids.entries()) {
    if (id === '') faults.push(fault(`Column ${place + 2} has no name.`));
    else if (known.has(id)) faults.push(fault(`There are two columns “${shortened(id)}”.`));
    else if (keys !== null && !keys.keys.has(id)) faults.push(fault(`The key has no row for “${shortened(id)}”.`));
    known.add(id);
  }
  for (const [id, row] of keys?.keys ?? [])
    if (!known.has(id)) faults.push({ table: 'key', line: row.line, why: `The answers have no column “${shortened(id)}”.` });
  return faults.length === 0 ? { questions: ids.map((id) => ({ id, key: keys?.keys.get(id) ?? null })) } : { faults };
}

/** Names may be left out; one that is there twice would count twice. */
function nameFaults(rows: readonly Row[]): TableFault[] {
  const seen = new Map<string, number>();
  return rows.flatMap(({ line, cells }): TableFault[] => {
    const name = cells[0]?.trim() ?? '';
    const before = seen.get(name);
    if (name === '') return [];
    if (before !== undefined)
      return [{ table: 'answers', line, why: `“${shortened(name)}” is in line ${before} already: each candidate has one row.` }];
    seen.set(name, line);
    return [];
  });
}

function readRow({ line, cells }: Row, questions: readonly AskedQuestion[], faults: TableFault[]): (string | null)[] {
  const fault = (why: string): void => void faults.push({ table: 'answers', line, why });
  const given = cells.slice(1);
  if (given.length !== questions.length) {
    fault(`This row has ${given.length} answers for ${questions.length} questions. A blank is an empty cell.`);
    return [];
  }
  return questions.map(({ id, key }, place) => {
    const cell = (given[place] ?? '').trim();
    if (cell === '') return null;
    const options = key === null ? ['0', '1'] : key.options;
    const meant = optionMeant(cell, options);
    if (meant === null)
      fault(
        key === null
          ? `“${shortened(id)}” has “${shortened(cell)}”. Without a key each cell is 1 for right, 0 for wrong, or blank: give the key as well.`
          : `“${shortened(id)}” has “${shortened(cell)}”; its options are ${shortened(options.join(' '))}.`,
      );
    return meant;
  });
}

/** As it is written; or, where that fits only one, in other capitals. */
function optionMeant(cell: string, options: readonly string[]): string | null {
  if (options.includes(cell)) return cell;
  const alike = options.filter((option) => option.toLowerCase() === cell.toLowerCase());
  return alike.length === 1 ? (alike[0] ?? null) : null;
}
