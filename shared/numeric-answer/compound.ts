import { compoundQuantities } from './quantities.js';
import { movePoint, scanNumber } from './number.js';
import type { TypedNumber } from './number.js';
import { matchUnit } from './match.js';
import { convert, findUnit } from './units.js';
import type { Unit } from './units.js';

/** One quantity in two or more units: "5 ft 6 in", "1 h 30 min", "2h30", "6' 3\"". */

interface Part {
  readonly number: TypedNumber;
  readonly unit: Unit;
}
const spelling = /^[^\d,+-]+/;
const mostParts = 4;

/**
 * The sum, in the first unit. Null unless every part has a unit of the kind expected, each smaller than the last and of one system with
 * it, whole numbers before the last, and no part so large that it would fill the unit before: "1.5 h 90 min" says one thing twice.
 */
export function readCompound(first: TypedNumber, rest: string, expected: Unit): Part | null {
  if (!compoundQuantities.has(expected.quantity)) return null;
  const parts: Part[] = [];
  let number = first;
  let remaining = rest;
  while (parts.length < mostParts) {
    const spelt = spelling.exec(remaining)?.[0] ?? '';
    const before = parts.at(-1);
    const unit = spelt === '' ? impliedUnit(number, remaining, parts) : spelledUnit(spelt, before, expected);
    if (unit === null || (before !== undefined && !follows(before, { number, unit }))) return null;
    parts.push({ number, unit });
    remaining = remaining.slice(spelt.length).replace(/^,? ?/, '');
    if (remaining === '') return parts.length === 1 ? null : sum(parts);
    const scan = scanNumber(remaining, true);
    if (!scan.found || scan.number.value < 0) return null;
    number = scan.number;
    remaining = remaining.slice(scan.length).replace(/^ /, '');
  }
  return null;
}

function spelledUnit(spelt: string, before: Part | undefined, expected: Unit): Unit | null {
  const text = spelt.trim().replace(/ ?(?:and|&)$/i, '');
  if (before?.unit.symbol === 'h' && /^m$/i.test(text)) return findUnit('min');
  const match = matchUnit(text, expected);
  return match.kind === 'unit' ? match.unit : null;
}

/** The unit left out at the end: "2h30" is minutes and "1 m 50" centimetres, with two figures; "5 ft 6" is inches. */
function impliedUnit(number: TypedNumber, remaining: string, parts: readonly Part[]): Unit | null {
  const before = parts[0];
  if (remaining !== '' || parts.length !== 1 || before === undefined || number.digits === null || number.exponent !== 0) return null;
  const next = ({ h: 'min', min: 's', m: 'cm', ft: 'in' } as Readonly<Record<string, string>>)[before.unit.symbol];
  if (next === undefined) return null;
  return (next === 'in' ? /^\d{1,2}$/ : /^\d\d$/).test(number.digits) ? findUnit(next) : null;
}

function follows(before: Part, next: Part): boolean {
  const metric = (unit: Unit): boolean => unit.quantity === 'time' || unit.factor === 1;
  if (metric(before.unit) !== metric(next.unit) || !Number.isInteger(movePoint(before.number, 0))) return false;
  const size = convert(1, next.unit, before.unit);
  return size < 1 && movePoint(next.number, 0) * size < 1;
}

function sum(parts: readonly Part[]): Part | null {
  const [first] = parts;
  if (first === undefined) return null;
  const total = parts.reduce((so, part) => so + Math.abs(movePoint(part.number, 0)) * convert(1, part.unit, first.unit), 0);
  const value = Number((first.number.value < 0 ? -total : total).toPrecision(15));
  return { number: { value, digits: null, exponent: 0 }, unit: first.unit };
}
