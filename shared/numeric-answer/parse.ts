import { cleanText } from './clean.js';
import { messages } from './messages.js';
import { movePoint, scanNumber, vanishes } from './number.js';
import type { Scan, TypedNumber } from './number.js';
import { matchUnit } from './match.js';
import { readCompound } from './compound.js';
import { readResistorStyle } from './special.js';
import { convert, findUnit, toSi } from './units.js';
import type { Unit } from './units.js';
import { endsAsLimit, fractionsInFigures, hasLimitSign, isLimit, withoutLabel } from './wording.js';

export type NotUnderstood = 'empty' | 'no-number' | 'wrong-kind' | 'ambiguous' | 'not-one-number' | 'out-of-range';

/** What a typed text was taken to say. */
export type Reading =
  | {
      readonly understood: true;
      /** In the unit expected. */
      readonly value: number;
      /** The unit expected, by the name it was asked for. */
      readonly unit: string;
      /** In the coherent SI unit; levels (dB, dBm, dBi, dB(A)) have none and stay in their own. */
      readonly si: number;
      /** The number as typed and the symbol of the unit typed; null for a bare number, which is in the unit expected. */
      readonly typed: { readonly number: number; readonly unit: string | null };
    }
  | { readonly understood: false; readonly reason: NotUnderstood; readonly message: string };

export const longestAnswer = 64;
const no = (reason: NotUnderstood, message: string): Reading => ({ understood: false, reason, message });

/**
 * Reads what a person typed for a quantity. Never throws, and takes time in proportion to the length of the text.
 *
 * A bare number is in the unit expected. The decimal point is a point; one comma is a decimal comma unless exactly three digits
 * follow and it could as well group ("1,234"), which is asked about. m (milli) and M (mega) are never exchanged for one another:
 * where the capitals do not settle which was meant, that is asked about too.
 * @param text what was typed, in any spelling; more than 64 characters are refused
 * @param expect the unit of the answer, such as "W", "mm²", "dB(A)"; "" for a plain number
 */
export function readQuantity(text: string, expect: string): Reading {
  const expected = findUnit(expect);
  if (expected === null) return no('wrong-kind', messages.unknownExpected(expect));
  const trimmed = text.trim();
  if (trimmed.length > longestAnswer) return tooLong(trimmed.slice(0, 1000));
  const plain = cleanText(trimmed);
  if (plain === '') return no('empty', messages.empty(expected));
  if (!/\d/.test(plain)) {
    if (/^[+-]?(?:nan|inf|infinity|∞)\b|^[+-]?∞/i.test(plain)) return no('out-of-range', messages.outOfRange());
    return no('no-number', messages.noNumber(trimmed, expected));
  }
  if (hasLimitSign(plain)) return no('not-one-number', messages.limit(trimmed));
  return readPlain(fractionsInFigures(withoutLabel(plain)), trimmed, expect, expected);
}

function tooLong(start: string): Reading {
  if (!/\d/.test(start)) return no('no-number', messages.tooLong());
  return no(/^[\d\s.,+-]{48}/.test(start) ? 'out-of-range' : 'not-one-number', messages.tooLong());
}

function readPlain(plain: string, typed: string, expect: string, expected: Unit): Reading {
  if (isLimit(plain)) return no('not-one-number', messages.limit(typed));
  if (expected.quantity === 'time' && /^\d{1,3}(?::\d\d){1,2}(?: ?[a-z]+)?$/i.test(plain)) return no('ambiguous', messages.clock(typed));
  const resistor = readResistorStyle(plain, expected);
  if (resistor !== null)
    return resistor.ask ? no('ambiguous', resistor.message) : understood(resistor.number, resistor.unit, expect, expected);
  const scan = scanNumber(plain, expected.quantity === 'length');
  if (!scan.found) return notANumber(scan, plain, typed, expected);
  const rest = plain.slice(scan.length).replace(/^ /, '');
  if (rest === '') return understood(scan.number, null, expect, expected);
  return readWithUnit(scan.number, rest, typed, expect, expected);
}

function notANumber(scan: Scan & { found: false }, plain: string, typed: string, expected: Unit): Reading {
  if (scan.why === 'divided-by-nothing') return no('out-of-range', messages.dividedByNothing());
  if (scan.why === 'several') return no('not-one-number', messages.several(typed));
  if (scan.why === 'two-readings' && scan.readings !== undefined) return no('ambiguous', messages.twoReadings(typed, scan.readings));
  if (scan.why === 'grouping') return no('ambiguous', messages.grouping(typed));
  const money = /^[£$€¥]/.exec(plain);
  if (money !== null) return no('wrong-kind', messages.unknownUnit(money[0], expected));
  return no(/\d[^\d]*[^\d.,'eE][^\d]*\d/.test(plain) ? 'not-one-number' : 'ambiguous', messages.numberFirst(typed, expected));
}

function readWithUnit(number: TypedNumber, rest: string, typed: string, expect: string, expected: Unit): Reading {
  const match = matchUnit(rest, expected);
  if (match.kind === 'unit') return understood(number, match.unit, expect, expected);
  // "6ft2" is square feet as it stands, and no six foot two.
  const compound = match.kind === 'other' ? null : readCompound(number, rest, expected);
  if (compound !== null) return understood(compound.number, compound.unit, expect, expected);
  if (match.kind === 'ask') return no('ambiguous', match.message);
  if (match.kind === 'other') return no('wrong-kind', messages.wrongKind(rest, match.unit, expected));
  const ohms = /^r\d+$/i.test(rest) ? findUnit('ohm') : null;
  if (ohms !== null) return no('wrong-kind', messages.wrongKind(typed, ohms, expected));
  if (/\d/.test(rest)) return no('not-one-number', messages.several(typed));
  if (endsAsLimit(rest)) return no('not-one-number', messages.limit(typed));
  return no('wrong-kind', messages.unknownUnit(rest, expected));
}

function understood(number: TypedNumber, unit: Unit | null, expect: string, expected: Unit): Reading {
  const from = unit ?? expected;
  const plainShift = from.factor === expected.factor && from.offset === expected.offset;
  const value = plainShift ? movePoint(number, from.exponent - expected.exponent) : convert(number.value, from, expected);
  const si = from.factor === 1 && from.offset === 0 ? movePoint(number, from.exponent) : toSi(number.value, from);
  const typed = movePoint(number, 0);
  const sound = [value, si, typed].every(Number.isFinite) && ![value, si, typed].some((x) => from.offset === 0 && vanishes(number, x));
  if (!sound) return no('out-of-range', messages.outOfRange());
  // Adding 0 turns -0 into 0.
  return { understood: true, value: value + 0, unit: expect, si: si + 0, typed: { number: typed + 0, unit: unit?.symbol ?? null } };
}
