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
  /** Whether a line may be broken before it. */
  breakable: boolean;
}

/** Characters that fit a line on a phone 320 px wide. */
const lineWidth = 30;

function escaped(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;').replace(/'/g, '&#39;');
}

export const piece = (mathml: string, width: number): Piece => ({ mathml, width, breakable: false });
export const sign = (text: string): Piece => ({ mathml: `<mo>${escaped(text)}</mo>`, width: 3, breakable: true });

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
  const [, letters = name, index = ''] = /^([A-Za-z]+)(.*)$/.exec(name) ?? [];
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
  return `<math display="block"><mrow>${joined(pieces)}</mrow></math>`;
}

/** One line when it fits a phone, else two: broken before the result when the rest fits, or where the longer of them is shortest. */
export function lines(pieces: readonly Piece[]): string[] {
  const breaks = pieces.flatMap((each, i) => (i > 1 && each.breakable ? [i] : []));
  if (widthOf(pieces) <= lineWidth || breaks.length === 0) return [math(pieces)];
  const longer = (at: number): number => Math.max(widthOf(pieces.slice(0, at)), widthOf(pieces.slice(at)));
  const last = breaks[breaks.length - 1] as number;
  const at = longer(last) <= lineWidth ? last : breaks.reduce((a, b) => (longer(b) < longer(a) ? b : a));
  return [math(pieces.slice(0, at)), math(pieces.slice(at))];
}
