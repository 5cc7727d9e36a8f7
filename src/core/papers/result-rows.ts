import { nearest } from '../nearest.js';
import { readLetters } from './letters.js';

/** Rows of a table of results, as a spreadsheet gives them, held against the class and the paper. */

export interface KnownMember {
  memberId: number;
  name: string;
  /** Why no sheet can be entered, said after the name; null when one can. */
  hindrance: string | null;
}

export interface KnownPaper {
  /** The letters of each question, version by version. */
  letters: readonly (readonly (readonly string[])[])[];
  members: readonly KnownMember[];
  /** Others who have a result already, under a name without an account or from a time in the class. */
  others: readonly { name: string; hindrance: string }[];
}

export interface RowSheet {
  /** Null for somebody without an account. */
  memberId: number | null;
  name: string;
  version: number;
  choices: (string | null)[];
}

export interface CheckedRow {
  /** As a spreadsheet counts: the header is 1. */
  row: number;
  name: string;
  /** What is wrong; empty for a clean row. */
  whys: string[];
  /** Clean, but perhaps not meant so. */
  doubt: string | null;
  /** Null for a row that is not clean. */
  sheet: RowSheet | null;
}

export type RowsChecked = { why: string } | { rows: CheckedRow[]; absent: string[] };

/** @param table the header and the rows below it; empty rows are passed over */
export function checkRows(table: readonly (readonly string[])[], known: KnownPaper): RowsChecked {
  const [header, ...below] = table;
  const columns = header === undefined ? null : readHeader(header, known.letters[0]?.length ?? 0);
  if (columns === null) return { why: 'There is no row. The first one names the columns: candidate, version, answers.' };
  if ('why' in columns) return columns;
  const rows = below.flatMap((cells, index) => {
    const row = index + 2;
    return cells.every((cell) => cell.trim() === '') ? [] : [checkRow(cells, row, columns, known)];
  });
  if (rows.length === 0) return { why: 'There is a header and no row below it.' };
  const checked = rows.map((one) => withTwins(one, rows));
  const here = new Set(rows.map(({ name }) => sameName(name)));
  const absent = known.members.filter(({ name, hindrance }) => hindrance === null && !here.has(sameName(name)));
  return { rows: checked, absent: absent.map(({ name }) => name) };
}

interface Columns {
  candidate: number;
  version: number;
  /** One column for all letters, or one for each question in turn. */
  answers: number[];
  together: boolean;
  /** Columns that our own file of results has and that say nothing new. */
  passedOver: ReadonlySet<number>;
}

const columnWords = 'The columns are candidate, version and answers; or candidate, version, 1, 2, 3 and so on.';

function readHeader(header: readonly string[], questions: number): Columns | { why: string } {
  const names = header.map((cell) => cell.trim().toLowerCase());
  const twice = names.find((name, index) => name !== '' && names.indexOf(name) !== index);
  if (twice !== undefined) return { why: `The header has “${shortly(twice)}” twice.` };
  const numbers = names.map((name) => Number(/^q?([1-9]\d{0,2})$/.exec(name)?.[1] ?? Number.NaN));
  const strange = names.find((name, index) => !plainNames.has(name) && Number.isNaN(numbers[index]));
  if (strange !== undefined) return { why: `The header has a column “${shortly(strange)}”. ${columnWords}` };
  for (const name of ['candidate', 'version'])
    if (!names.includes(name)) return { why: `The header has no column “${name}”. ${columnWords}` };
  const places = Array.from({ length: questions }, (_, index) => numbers.indexOf(index + 1));
  const count = numbers.filter((number) => !Number.isNaN(number)).length;
  const together = names.includes('answers');
  if (together ? count > 0 : count === 0)
    return { why: `The header has ${together ? 'answers twice over' : 'no answers'}. ${columnWords}` };
  if (!together && (count !== questions || places.includes(-1)))
    return { why: `The header has ${count} columns for answers; the paper has questions 1 to ${questions}.` };
  return {
    candidate: names.indexOf('candidate'),
    version: names.indexOf('version'),
    answers: together ? [names.indexOf('answers')] : places,
    together,
    passedOver: new Set(['right', 'passed'].map((name) => names.indexOf(name))),
  };
}

const plainNames = new Set(['candidate', 'version', 'answers', 'right', 'passed', '']);

function checkRow(cells: readonly string[], row: number, columns: Columns, known: KnownPaper): CheckedRow {
  const whys: string[] = [];
  const name = tidyName(cells[columns.candidate] ?? '');
  const who = findCandidate(name, known);
  if (who.why !== null) whys.push(who.why);
  const typed = (cells[columns.version] ?? '').trim();
  const letters = /^\d{1,3}$/.test(typed) ? known.letters[Number(typed) - 1] : undefined;
  if (letters === undefined) whys.push(versionFault(typed, known.letters.length));
  const used = new Set([columns.candidate, columns.version, ...columns.answers, ...columns.passedOver]);
  const spare = cells.filter((cell, index) => cell.trim() !== '' && !used.has(index)).length;
  if (spare > 0)
    whys.push(`${spare} ${spare === 1 ? 'cell' : 'cells'} too many: the header has no column for ${spare === 1 ? 'it' : 'them'}.`);
  const read = readAnswers(cells, columns, letters);
  if ('why' in read) whys.push(read.why);
  if (whys.length > 0 || 'why' in read) return { row, name, whys, doubt: null, sheet: null };
  return {
    row,
    name: who.name,
    whys,
    doubt: who.memberId === null ? misspelt(name, known) : null,
    sheet: { memberId: who.memberId, name: who.name, version: Number(typed), choices: read.choices },
  };
}

export const versionFault = (typed: string, versions: number): string =>
  typed === ''
    ? 'The version is missing; it stands on the sheet.'
    : `There is no version “${shortly(typed)}”: the paper has ${versions === 1 ? 'version 1 only' : `versions 1 to ${versions}`}.`;

function readAnswers(
  cells: readonly string[],
  { answers, together }: Columns,
  letters: readonly (readonly string[])[] | undefined,
): { choices: (string | null)[] } | { why: string } {
  const given = answers.flatMap((column) => (column < cells.length ? [plainDashes(cells[column] ?? '').trim()] : []));
  if (given.every((cell) => cell === '')) return { why: 'There are no answers.' };
  const long = together ? -1 : given.findIndex((cell) => [...cell].length > 1);
  if (long >= 0) return { why: `Question ${long + 1} has “${shortly(given[long] ?? '')}”, which is not one letter.` };
  // Without a version nothing can be said of the letters.
  if (letters === undefined) return { choices: [] };
  const read = readLetters(together ? given.join('') : given.map((cell) => (cell === '' ? '-' : cell)).join(''), letters);
  return read.ok ? { choices: read.choices } : { why: read.why };
}

/** Word processors and spreadsheets put longer dashes for a hyphen. */
export const plainDashes = (typed: string): string => typed.replace(/[\u2010-\u2015\u2212]/g, '-');

function findCandidate(name: string, { members, others }: KnownPaper): { memberId: number | null; name: string; why: string | null } {
  const fits = members.filter((member) => sameName(member.name) === sameName(name));
  if (fits.length > 1)
    return { memberId: null, name, why: `${fits.length} members have this name. Enter their sheets one by one, and choose from the list.` };
  const [member] = fits;
  if (member !== undefined) return { memberId: member.memberId, name: member.name, why: hindered(member.hindrance) };
  const other = others.find((one) => sameName(one.name) === sameName(name));
  return { memberId: null, name, why: other === undefined ? nameFault(name) : hindered(other.hindrance) };
}

const hindered = (hindrance: string | null): string | null => (hindrance === null ? null : `This candidate ${hindrance}.`);

/** A name that nearly is a member's, who has no row of this name. */
function misspelt(name: string, { members }: KnownPaper): string | null {
  const near = nearest(
    name,
    members.map((member) => member.name),
  );
  return near === null ? null : `No member has this name; ${near} has nearly the same. It would be entered as somebody without an account.`;
}

function withTwins(row: CheckedRow, rows: readonly CheckedRow[]): CheckedRow {
  const twin = rows.find((other) => other !== row && row.name !== '' && sameName(other.name) === sameName(row.name));
  return twin === undefined ? row : { ...row, whys: [...row.whys, `Row ${twin.row} has the same candidate.`], doubt: null, sheet: null };
}

/** Names that a reader would take for one. */
export const sameName = (name: string): string => tidyName(name).toLowerCase();

/** As it is kept. Our own file of results puts an apostrophe before what a spreadsheet would work out; it is no part of the name. */
export const tidyName = (name: string): string =>
  name
    .normalize('NFC')
    .trim()
    .replace(/\s+/g, ' ')
    .replace(/^'(?=[=+\-@])/, '');

const mostNameLetters = 60;

/** Why a name without an account cannot be kept; null when it can. */
export function nameFault(name: string): string | null {
  if (name === '') return 'The name is missing.';
  if ([...name].length > mostNameLetters) return `The name is too long: ${mostNameLetters} letters are the most.`;
  return /[\p{Cc}\p{Cf}\p{Co}\p{Cn}\u2028\u2029]/u.test(name) ? 'The name holds a sign that cannot be shown.' : null;
}

/** Enough of a text to know it by. */
const shortly = (text: string): string => (text.length <= 30 ? text : `${text.slice(0, 29)}…`);
