import { matchUnit } from './match.js';
import { messages } from './messages.js';
import type { TypedNumber } from './number.js';
import { prefixed, prefixOf } from './spelling.js';
import type { Unit } from './units.js';

/** Ways of writing a quantity in which number and unit are woven together. */

export type Woven =
  { readonly ask: false; readonly number: TypedNumber; readonly unit: Unit } | { readonly ask: true; readonly message: string };

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
  // One metre and five what?
  if (letter === 'm' && base.symbol === 'm' && part.length === 1) return { ask: true, message: messages.metresAndMore(text) };
  if (letter === base.symbol || (ohms && /^r$/i.test(letter))) return { ask: false, number, unit: prefixed(base, null) };
  const prefix = prefixOf(letter, base);
  if (prefix === null || 'cdh'.includes(prefix.letter)) return null;
  if (prefix.letter === 'm' && matchUnit(`m${part}`, expected).kind !== 'unknown') return null;
  const clear = prefix.letter !== 'm' && (prefix.letter !== 'M' || ohms || base.symbol === 'Hz');
  return clear ? { ask: false, number, unit: prefixed(base, prefix) } : { ask: true, message: messages.prefixAlone(text, expected) };
}
