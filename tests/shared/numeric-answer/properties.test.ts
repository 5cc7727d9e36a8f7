import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatNumber, formatQuantity } from '../../../shared/format.js';
import { describeReading } from '../../../shared/numeric-answer/describe.js';
import { readQuantity } from '../../../shared/numeric-answer/parse.js';
import { findUnit } from '../../../shared/numeric-answer/units.js';

const runs = { seed: 20261125, numRuns: 400 };
const reasons = new Set(['empty', 'no-number', 'wrong-kind', 'ambiguous', 'not-one-number', 'out-of-range']);

/** One unit of each kind, and a few with prefixes. */
const kinds = [
  'V',
  'A',
  'W',
  'VA',
  'ohm',
  'Ah',
  'Wh',
  'F',
  'H',
  'MHz',
  'm',
  'mm²',
  'L',
  'h',
  'degree',
  '°C',
  '%',
  'dB',
  'dBm',
  'W/m²',
  'V/m',
  'A/m',
  'T',
  'ohm/km',
  'dB/100 m',
  'mile/s',
  'rpm',
  'kg',
  'bar',
  'N',
];
const anyUnit = fc.constantFrom(...kinds, 'mA', 'milliohm', 'microfarad', 'kilohm', 'ft', 'min', 's', 'J', 'dBi', 'dB(A)', '');

/** Numbers of up to six figures, of any size that a question could have. */
const tame = fc
  .tuple(fc.integer({ min: -999_999, max: 999_999 }), fc.integer({ min: -9, max: 6 }))
  .map(([digits, power]) => Number(`${digits}e${power}`));
const positive = fc
  .tuple(fc.integer({ min: 1, max: 999_999 }), fc.integer({ min: -6, max: 3 }))
  .map(([digits, power]) => Number(`${digits}e${power}`));

/** Texts that look like answers, mangled. */
const pieces = [
  '1',
  '12',
  '1,234',
  '.',
  ',',
  '5',
  ' ',
  '-',
  '−',
  '+',
  'e',
  '10',
  '^',
  '³',
  '½',
  '/',
  'k',
  'M',
  'm',
  'W',
  'A',
  'Ω',
  '°',
  '%',
  'ft',
  "'",
  '"',
  'x',
  '×',
  '=',
  '(',
  ')',
  'dB',
  'sq',
  'per',
  '２',
  '\u202f',
  'to',
  'R',
  '１／２',
  '😀',
  '\ud800',
  'constructor',
  '__proto__',
];
const mangled = fc.array(fc.constantFrom(...pieces), { maxLength: 20 }).map((parts) => parts.join(''));

describe('the reader of answers, whatever is typed', () => {
  it('never throws and always gives a finite number or a reason with a message', () => {
    const anyText = fc.oneof(fc.string({ unit: 'binary', maxLength: 80 }), fc.string({ maxLength: 80 }), mangled);
    fc.assert(
      fc.property(anyText, fc.oneof(anyUnit, fc.string({ maxLength: 60 })), (text, unit) => {
        const reading = readQuantity(text, unit);
        expect(describeReading(reading).length).toBeGreaterThan(0);
        if (reading.understood) expect([reading.value, reading.si, reading.typed.number].every(Number.isFinite)).toBe(true);
        else expect([reasons.has(reading.reason), reading.message.length > 20, reading.message.length < 400]).toEqual([true, true, true]);
      }),
      { ...runs, numRuns: 3000 },
    );
  });

  it.each([
    ['digits', '1'],
    ['spaces before a letter', ' '],
    ['groups', '1,'],
    ['pairs', '1 '],
    ['fractions', '½'],
    ['raised figures', '²'],
    ['labels', 'V='],
    ['fillers', 'about '],
    ['letters', 'a'],
    ['full-width digits', '１'],
    ['invisible characters', '\u200b'],
    ['signs', '-'],
    ['ligatures that unfold', '\ufdfa'],
  ])('needs less than 50 ms for 100,000 characters of %s', (_name, piece) => {
    const text = `${piece.repeat(100_000).slice(0, 99_999)}x`;
    // The best of three: a busy machine is no fault of the reader.
    const times = [1, 2, 3].map(() => {
      const started = performance.now();
      expect(readQuantity(text, 'W').understood).toBe(false);
      return performance.now() - started;
    });
    expect(Math.min(...times)).toBeLessThan(50);
  });

  it('reads back every number that the pages print, in every unit', () => {
    fc.assert(
      fc.property(tame, anyUnit, (value, unit) => {
        const reading = readQuantity(formatQuantity(value, unit), unit);
        expect(reading.understood ? reading.value : reading.reason).toBe(value);
      }),
      { ...runs, numRuns: 2000 },
    );
  });

  it('reads a bare number in the unit expected', () => {
    fc.assert(
      fc.property(tame, anyUnit, (value, unit) => {
        const reading = readQuantity(String(value), unit);
        expect(reading.understood ? [reading.value, reading.typed.unit] : reading.reason).toEqual([value, null]);
      }),
      runs,
    );
  });

  const powers: Record<string, number> = { p: -12, n: -9, µ: -6, u: -6, m: -3, k: 3, M: 6, G: 9 };
  it.each(['W', 'Ω', 'J', 'ohm'])('takes a prefixed %s as the same number with the power of ten', (unit) => {
    fc.assert(
      fc.property(positive, fc.constantFrom(...Object.keys(powers)), fc.boolean(), (value, prefix, spaced) => {
        const short = readQuantity(`${value}${spaced ? ' ' : ''}${prefix}${unit}`, unit);
        const [mantissa = '', exponent = '0'] = String(value).split('e');
        expect(short.understood ? short.value : short.reason).toBe(Number(`${mantissa}e${Number(exponent) + (powers[prefix] ?? NaN)}`));
      }),
      runs,
    );
  });

  it('takes a number at the edge of the unit the same in any spacing, width of digits and sign of minus', () => {
    const wide = (text: string): string => text.replace(/[0-9]/g, (digit) => String.fromCharCode(digit.charCodeAt(0) + 0xfee0));
    fc.assert(
      fc.property(fc.integer({ min: -9999, max: 9999 }), fc.constantFrom('A', ' A', '\u00a0A', '  amperes', '\u2009A'), (value, tail) => {
        const typed = `${value}${tail}`;
        for (const text of [typed, wide(typed), typed.replace('-', '−'), typed.replace('-', '–'), `  ${typed}  `]) {
          const reading = readQuantity(text, 'A');
          expect(reading.understood ? reading.value : reading.reason).toBe(value);
        }
      }),
      runs,
    );
  });

  it('takes a decimal comma as a point unless exactly three digits follow, which it asks about', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999 }), fc.stringMatching(/^[0-9]{1,6}$/), (whole, part) => {
        const reading = readQuantity(`${whole},${part}`, 'A');
        expect(reading.understood ? reading.value : reading.reason).toBe(part.length === 3 ? 'ambiguous' : Number(`${whole}.${part}`));
      }),
      runs,
    );
  });

  it('never exchanges m and M, but for mhz and MAH: a spelling is read as typed or asked about', () => {
    const units = ['W', 'A', 'V', 'Hz', 'ohm', 'Ah', 'F', 'Wh', 'J', 'C', 'Pa'];
    const casings = [(text: string) => text, (text: string) => text.toLowerCase(), (text: string) => text.toUpperCase()];
    for (const unit of units) {
      for (const letter of ['m', 'M']) {
        for (const casing of casings) {
          const reading = readQuantity(`5 ${letter}${casing(unit)}`, unit);
          const milli = letter === 'm' ? !(unit === 'Hz' && casing(unit) === 'hz') : unit === 'Ah' && casing(unit) === 'AH';
          const asTyped = milli ? 0.005 : 5_000_000;
          if (reading.understood) expect([letter, unit, reading.value]).toEqual([letter, unit, asTyped]);
          else expect([letter, unit, reading.reason]).toEqual([letter, unit, 'ambiguous']);
        }
      }
    }
  });

  it('refuses every unit of another kind as the wrong kind', () => {
    for (const expected of kinds) {
      for (const typed of kinds) {
        const symbol = findUnit(typed)?.symbol ?? '';
        // In the wrong capitals h is still the unit asked for: 5 H of hours, 5 h of henries.
        if (symbol.toLowerCase() === findUnit(expected)?.symbol.toLowerCase()) continue;
        // Where a temperature is asked for, F is degrees Fahrenheit and ° the degrees asked for; where a mass is, T is tonnes.
        if (['F for °C', 'degree for °C', 'T for kg'].includes(`${typed} for ${expected}`)) continue;
        const reading = readQuantity(`5 ${symbol}`, expected);
        expect([typed, expected, reading.understood ? 'read' : reading.reason]).toEqual([
          typed,
          expected,
          expected === 'h' && typed === 'm' ? 'ambiguous' : 'wrong-kind',
        ]);
      }
    }
  });

  it('prints numbers that differ by a digit differently', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999_998 }), (digits) => {
        expect(formatNumber(digits)).not.toBe(formatNumber(digits + 1));
      }),
      runs,
    );
  });
});
