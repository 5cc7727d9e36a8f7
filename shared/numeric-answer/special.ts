import { compoundQuantities } from './quantities.js';
import { movePoint, scanNumber } from './number.js';
import type { TypedNumber } from './number.js';
import { matchUnit } from './match.js';
import { prefixed, prefixOf } from './spelling.js';
import { convert } from './units.js';
import type { Unit } from './units.js';

/** Ways of writing a quantity in which number and unit are woven together. */

export type Woven =
  { readonly ask: false; readonly number: TypedNumber; readonly unit: Unit } | { readonly ask: true; readonly text: string };

/**
 * "2k2", "4R7", "R47", "3V3": a letter in place of the decimal point, as on resistors (IEC 60062), capacitors and circuit drawings.
 * Null if the text is not of that form or the letter does not belong to the unit expected.
 */
export function readResistorStyle(text: string, expected: Unit): Woven | null {
  const parts = /^([+-]?)(\d*)([a-zΩ])(\d+)(?: ?([a-zΩ]+))?$/i.exec(text);
  const base = expected.base;
  if (parts === null || base === null) return null;
  const [, sign = '', whole = '', letter = '', part = '', tail = ''] = parts;
  const ohms = base.symbol === 'Ω';
  if ((whole === '' && !(ohms && /^r$/i.test(letter))) || /[exd]/i.test(letter)) return null;
  if (tail !== '') {
    const unit = matchUnit(tail, expected);
    if (unit.kind !== 'unit' || unit.unit.exponent !== base.exponent || unit.unit.factor !== base.factor) return null;
  }
  const digits = `${sign}${whole === '' ? '0' : whole}.${part}`;
  const number: TypedNumber = { value: Number(digits), digits, exponent: 0 };
  if (letter === base.symbol || (ohms && /^r$/i.test(letter))) return { ask: false, number, unit: prefixed(base, null) };
  const prefix = prefixOf(letter, base);
  if (prefix === null || 'cdh'.includes(prefix.letter)) return null;
  if (prefix.letter === 'm' && matchUnit(`m${part}`, expected).kind !== 'unknown') return null;
  const clear = prefix.letter !== 'm' && (prefix.letter !== 'M' || ohms || base.symbol === 'Hz');
  return clear ? { ask: false, number, unit: prefixed(base, prefix) } : { ask: true, text };
}

/** "5 ft 6 in", "1 h 30 min", "6' 3\"": the sum, in the first unit. Null unless every part has a unit of the kind expected, each smaller than the last. */
export function readCompound(first: TypedNumber, rest: string, expected: Unit): { number: TypedNumber; unit: Unit } | null {
  if (!compoundQuantities.has(expected.quantity)) return null;
  let number: TypedNumber = first;
  let remaining = rest;
  let unit: Unit | null = null;
  let previous: Unit | null = null;
  let total = 0;
  for (let part = 0; part < 4; part += 1) {
    const spelling = /^[^\d,+-]+/.exec(remaining)?.[0].trim();
    const match = spelling === undefined ? null : matchUnit(spelling.replace(/ ?(?:and|&)$/i, ''), expected);
    if (spelling === undefined || match?.kind !== 'unit') return null;
    const size: number = convert(1, match.unit, unit ?? match.unit);
    if (previous !== null && size >= convert(1, previous, unit ?? match.unit)) return null;
    unit ??= match.unit;
    previous = match.unit;
    total += Math.abs(movePoint(number, 0)) * size;
    remaining = remaining.slice(/^[^\d,+-]+/.exec(remaining)?.[0].length ?? 0).replace(/^,? ?/, '');
    if (remaining === '') {
      const value = Number((first.value < 0 ? -total : total).toPrecision(15));
      return part === 0 ? null : { number: { value, digits: null, exponent: 0 }, unit };
    }
    const scan = scanNumber(remaining, true);
    if (!scan.found || scan.number.value < 0) return null;
    number = scan.number;
    remaining = remaining.slice(scan.length).replace(/^ /, '');
  }
  return null;
}
