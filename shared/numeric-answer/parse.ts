import { cleanText } from './clean.js';
import { messages } from './messages.js';
import { movePoint, scanNumber, vanishes } from './number.js';
import type { TypedNumber } from './number.js';
import { matchUnit } from './match.js';
import { readCompound, readResistorStyle } from './special.js';
import { convert, findUnit, toSi } from './units.js';
import type { Unit } from './units.js';

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

const fillers = new Set(
  'approx approximately approximate about around roughly circa ca c nearly almost say is it its equals answer the ans i think get got make me'.split(
    ' ',
  ),
);
const limits =
  /^(?:[<>≤≥±]|\+\/?-|(?:less|more|greater|fewer|not|at|up|over|under|above|below|between|from|within|max|min|minimum|maximum)\b)/i;

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
  if (trimmed.length > longestAnswer) return no(/\d/.test(trimmed.slice(0, 1000)) ? 'out-of-range' : 'no-number', messages.tooLong());
  const plain = cleanText(trimmed);
  if (plain === '') return no('empty', messages.empty(expected));
  if (!/\d/.test(plain)) {
    if (/^[+-]?(?:nan|inf|infinity|∞)\b|^[+-]?∞/i.test(plain)) return no('out-of-range', messages.outOfRange());
    return no('no-number', messages.noNumber(trimmed, expected));
  }
  return readPlain(withoutLabel(plain), trimmed, expect, expected);
}

/** Drops "V =", "answer:", "approximately", "~" and the like in front of the number. */
function withoutLabel(plain: string): string {
  let rest = plain.replace(/^(?:[^\d=:≈~≃]*|[a-z]\w{0,11} ?)[=:≈~≃] ?/i, '').replace(/^[=:≈~≃ ]+/, '');
  for (;;) {
    const word = /^([a-z]+)(?:['.,]+[a-z]?)? ?/i.exec(rest);
    if (word === null || !fillers.has((word[1] ?? '').toLowerCase())) return rest.replace(/[ .,;!?]+$/, '');
    rest = rest.slice(word[0].length).replace(/^[=:≈~≃ ]+/, '');
  }
}

function readPlain(plain: string, typed: string, expect: string, expected: Unit): Reading {
  if (limits.test(plain)) return no('not-one-number', messages.limit(typed));
  const resistor = readResistorStyle(plain, expected);
  if (resistor !== null)
    return resistor.ask
      ? no('ambiguous', messages.prefixAlone(resistor.text, expected))
      : understood(resistor.number, resistor.unit, expect, expected);
  const scan = scanNumber(plain, expected.quantity === 'length');
  if (!scan.found) {
    if (scan.why === 'divided-by-nothing') return no('out-of-range', messages.dividedByNothing());
    if (scan.why === 'several') return no('not-one-number', messages.several(typed));
    if (scan.why === 'two-readings' && scan.readings !== undefined) return no('ambiguous', messages.twoReadings(typed, scan.readings));
    if (scan.why === 'grouping') return no('ambiguous', messages.grouping(typed));
    return no(/\d[^\d]*[^\d.,'eE][^\d]*\d/.test(plain) ? 'not-one-number' : 'ambiguous', messages.numberFirst(typed, expected));
  }
  const rest = plain.slice(scan.length).replace(/^ /, '');
  if (rest === '') return understood(scan.number, null, expect, expected);
  return readWithUnit(scan.number, rest, typed, expect, expected);
}

function readWithUnit(number: TypedNumber, rest: string, typed: string, expect: string, expected: Unit): Reading {
  const match = matchUnit(rest, expected);
  if (match.kind === 'unit') return understood(number, match.unit, expect, expected);
  const compound = readCompound(number, rest, expected);
  if (compound !== null) return understood(compound.number, compound.unit, expect, expected);
  if (match.kind === 'ask') return no('ambiguous', match.message);
  if (match.kind === 'other') return no('wrong-kind', messages.wrongKind(rest, match.unit, expected));
  const ohms = /^r\d+$/i.test(rest) ? findUnit('ohm') : null;
  if (ohms !== null) return no('wrong-kind', messages.wrongKind(typed, ohms, expected));
  if (/\d/.test(rest)) return no('not-one-number', messages.several(typed));
  if (/^(?:or|and) (?:more|less|over|under|above|below)|^[+-]$/i.test(rest)) return no('not-one-number', messages.limit(typed));
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
