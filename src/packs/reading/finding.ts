import type { Path } from '../../core/pack-draft.js';

/** One thing to mend in a pack (`error`) or to look at again (`warning`), with its place. */
export interface Finding {
  level: 'error' | 'warning';
  /** A stable name of the rule, such as `unknown-key`. */
  rule: string;
  /** Relative to the pack's folder, with `/` between the parts; `.` is the folder itself. */
  file: string;
  /** Both from 1; the column counts as editors do, in UTF-16 units. */
  line: number;
  column: number;
  /** Where in the file's data, such as `questions[3].options[1].text`; empty for the file as a whole. */
  path: string;
  /** What is wrong and how to mend it. */
  message: string;
}

/** The most findings of one reading: more would only be scrolled past. */
export const findingLimit = 200;

/** `['questions', 3, 'text']` as `questions[3].text`. */
export function pathText(path: Path): string {
  let out = '';
  for (const step of path) out += typeof step === 'number' ? `[${step}]` : out === '' ? plain(step) : `.${plain(step)}`;
  return out;
}

/** A text out of a pack as it may stand in a message: in quote marks, on one line, 80 letters at most, nothing invisible. */
export function quoted(text: string): string {
  return `"${plain(text)}"`;
}

/** As `quoted`, without the marks: for names of files and keys. */
export function plain(text: string): string {
  const letters = Array.from(text.slice(0, 400));
  const cut = letters.length > 80 || text.length > 400 ? `${letters.slice(0, 79).join('')}…` : letters.join('');
  return visible(cut);
}

/** On one line, with everything that does not show (or that changes how the rest shows) given by its number. */
function visible(text: string): string {
  return text.replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu, (letter) => stand.get(letter) ?? codeName(letter));
}

const stand = new Map([
  ['\n', '⏎'],
  ['\t', ' '],
]);

/** A character nobody can see, by its number: `<U+202E>`. */
export function codeName(letter: string): string {
  return `<U+${(letter.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}>`;
}

/** In the order of the files and of their lines, each once, at most `findingLimit`; errors are the last to be left out. */
export function inOrder(findings: Finding[]): Finding[] {
  const safe = findings.map((finding) => ({ ...finding, message: visible(finding.message) }));
  const unique = new Map(safe.map((finding) => [JSON.stringify(finding), finding]));
  const sorted = [...unique.values()].sort(byPlace);
  if (sorted.length <= findingLimit) return sorted;
  const errors = sorted.filter((finding) => finding.level === 'error');
  const warnings = sorted.filter((finding) => finding.level === 'warning');
  const kept = [...errors, ...warnings].slice(0, findingLimit - 1).sort(byPlace);
  const left = sorted.length - kept.length;
  const level = errors.length > 0 ? 'error' : 'warning';
  const message = `There is more: ${left} further findings are not listed. Mend these first and check again.`;
  return [...kept, { level, rule: 'too-many-findings', file: '.', line: 1, column: 1, path: '', message }];
}

function byPlace(a: Finding, b: Finding): number {
  return (
    compare(a.file, b.file) ||
    a.line - b.line ||
    a.column - b.column ||
    compare(a.rule, b.rule) ||
    compare(a.path, b.path) ||
    compare(a.message, b.message)
  );
}

/** By code unit, so that the order is the same whatever the machine's language. */
export function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
