import { plain } from './numbers.js';
import { withUnit } from './units.js';

/**
 * The pieces that formulas are set from, in MathML Core. Every text from a pack is escaped here, and no element or attribute comes from
 * one, so what is made of these pieces is safe to print into a page as it is.
 */

/** A piece of a row: its MathML, and about how many characters wide it is. */
export interface Piece {
  mathml: string;
  width: number;
  /** Whether a line may be broken before it: best before a relation, at need before another sign. */
  breaks: 'relation' | 'sign' | null;
}

/** Characters that fit a line on a phone 320 px wide. */
const lineWidth = 25;

function escaped(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;').replace(/'/g, '&#39;');
}

const relations = new Set(['=', '≈', '≤', '≥', '<', '>', ',']);

export const piece = (mathml: string, width: number): Piece => ({ mathml, width, breaks: null });
export const sign = (text: string): Piece => ({
  mathml: `<mo>${escaped(text)}</mo>`,
  width: 3,
  breaks: relations.has(text) ? 'relation' : 'sign',
});

/** A number with its whole part in groups of three from five digits on, so that zeros can be counted. */
function grouped(value: number): string {
  const [whole = '', ...rest] = plain(value).split('.');
  return [whole.length < 5 ? whole : whole.replace(/(?=(?:\d{3})+$)(?!^)/g, '\u2009'), ...rest].join('.');
}

export function figure(value: number): Piece {
  const text = grouped(value);
  return piece(`<mn>${text}</mn>`, text.length);
}

export const widthOf = (row: readonly Piece[]): number => row.reduce((sum, { width }) => sum + width, 0);
export const joined = (row: readonly Piece[]): string => row.map(({ mathml }) => mathml).join('');
export const inRow = (row: readonly Piece[]): string => (row.length === 1 ? joined(row) : `<mrow>${joined(row)}</mrow>`);

/** A name in symbols: letters in italics, what follows the first digit as an index. */
export function symbol(name: string): Piece {
  const [, letters = name, index = ''] = /^([A-Za-z]+)([^A-Za-z].*)?$/.exec(name) ?? [];
  const base = `<mi>${escaped(letters)}</mi>`;
  return piece(index === '' ? base : `<msub>${base}<mn>${escaped(index)}</mn></msub>`, name.length);
}

/** A quantity: the number, and its unit upright after a space that does not break. */
export function quantity(value: number, unit: string): Piece {
  if (unit === '') return figure(value);
  const number = plain(value);
  const text = withUnit(number, unit).slice(number.length + 1);
  return piece(`<mrow><mn>${grouped(value)}</mn><mtext>\u00a0${escaped(text)}</mtext></mrow>`, number.length + 1 + text.length);
}

export function bracketed(row: readonly Piece[]): Piece {
  return piece(`<mrow><mo>(</mo>${joined(row)}<mo>)</mo></mrow>`, widthOf(row) + 2);
}

export function fraction(above: readonly Piece[], below: readonly Piece[]): Piece {
  return piece(`<mfrac>${inRow(above)}${inRow(below)}</mfrac>`, Math.max(widthOf(above), widthOf(below)) + 1);
}

function math(pieces: readonly Piece[]): string {
  const [first] = pieces;
  // A sign that opens a stretch would else be set close to what follows, as the minus of a number is.
  const row = first === undefined || first.breaks === null ? joined(pieces) : joined(pieces).replace('<mo>', '<mo form="infix">');
  return `<math displaystyle="true"><mrow>${row}</mrow></math>`;
}

/** A row cut before each piece where `cut` says so; never before the first. */
function cutRow(row: readonly Piece[], cut: (piece: Piece, part: readonly Piece[]) => boolean): Piece[][] {
  const parts: Piece[][] = [];
  for (const each of row) {
    const part = parts.at(-1);
    if (part === undefined || cut(each, part)) parts.push([each]);
    else part.push(each);
  }
  return parts;
}

/**
 * A formula, ready to print: one `<math>` for each stretch that stays on one line, and places to break the line between them: before a
 * relation, and before another sign only where a stretch would not fit a phone.
 */
export function formula(pieces: readonly Piece[]): string {
  if (widthOf(pieces) <= lineWidth) return math(pieces);
  const isRelation = ({ breaks }: Piece): boolean => breaks === 'relation';
  const [left = [], first = [], ...more] = cutRow(pieces, isRelation);
  const start = widthOf(left) + widthOf(first) <= lineWidth ? [[...left, ...first]] : [left, first];
  const stretches = [...start, ...more].flatMap((part) =>
    widthOf(part) <= lineWidth
      ? [part]
      : cutRow(part, (each, before) => each.breaks === 'sign' && !(before.length === 1 && before.every(isRelation))),
  );
  return stretches
    .filter((part) => part.length > 0)
    .map(math)
    .join('\u200b');
}
