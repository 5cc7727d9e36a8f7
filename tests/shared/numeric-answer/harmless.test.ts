import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { formatQuantity } from '../../../shared/format.js';
import { describeReading } from '../../../shared/numeric-answer/describe.js';
import { longestAnswer, readQuantity } from '../../../shared/numeric-answer/parse.js';

/** Differences of writing that must not matter, and the cost of a text, counted and not timed. */

const runs = { seed: 20261126, numRuns: 2000 };

/** Every unit that a question asks for or prints, by the name the packs use. */
const asked =
  'W V A m ohm MHz % Ah min mA dB(A) h milliohm microfarad dBi dB s mm² W/m² ohm/km mW kilohm V/m km degree dBm Wh J ft kW kHz GHz kV mV µA nF pF mAh kWh mJ cm mm in mW/cm² dBW °C K kg';
const units = fc.constantFrom(...asked.split(' '), '');
const numbers = fc
  .tuple(fc.integer({ min: -999_999, max: 999_999 }), fc.integer({ min: -12, max: 9 }))
  .map(([digits, power]) => Number(`${digits}e${power}`));

const value = (text: string, unit: string): number | string => {
  const reading = readQuantity(text, unit);
  return reading.understood ? reading.value : reading.reason;
};
const wide = (text: string): string => text.replace(/[!-~]/g, (sign) => String.fromCharCode(sign.charCodeAt(0) + 0xfee0));

describe('what is printed', () => {
  it('reads back as the same number in every unit asked for', () => {
    fc.assert(
      fc.property(numbers, units, (number, unit) => {
        expect(value(formatQuantity(number, unit), unit)).toBe(number);
      }),
      runs,
    );
  });

  it('beside the field reads back as the same number, so that a reader may copy it into the field', () => {
    fc.assert(
      fc.property(numbers, units, units, (number, typed, unit) => {
        const reading = readQuantity(formatQuantity(number, typed), unit);
        if (!reading.understood) return;
        const shown = describeReading(reading).replace(/^read as (?:.* = )?/, '');
        const again = readQuantity(shown, unit);
        expect(again.understood ? Math.abs(again.value - reading.value) <= 1e-5 * Math.abs(reading.value) : shown).toBe(true);
      }),
      runs,
    );
  });
});

describe('how it is written', () => {
  const spaces = fc.constantFrom('', ' ', '  ', '\u00a0', '\u202f', '\t', '\u200b', '\u200f');
  it('matters neither in spaces round it, nor in wide letters, nor by a full stop or a label', () => {
    fc.assert(
      fc.property(numbers, units, spaces, spaces, (number, unit, before, between) => {
        const plain = `${number}${unit === '' ? '' : ` ${unit}`}`;
        for (const text of [`${before}${plain}${between}`, plain.replace(' ', between), wide(plain), `${plain}.`, `x = ${plain}`]) {
          expect([text, value(text, unit)]).toEqual([text, number]);
        }
      }),
      runs,
    );
  });

  const sloppy: readonly (readonly [unit: string, factor: number, spellings: string])[] = [
    ['W', 1000, 'kW kw KW Kw'],
    ['A', 1, 'A a amps AMPS Amps'],
    ['A', 0.001, 'mA ma'],
    ['V', 1, 'V v volts VOLTS'],
    ['ohm', 1000, 'kΩ KΩ kohm KOHM Kohm kOhm'],
    ['MHz', 1, 'MHz Mhz MHZ mhz'],
    ['MHz', 0.001, 'kHz khz KHz KHZ'],
    ['Ah', 0.001, 'mAh mah MAH'],
    ['Wh', 1000, 'kWh kwh KWH KWh'],
    ['dB(A)', 1, 'dB(A) db(a) DB(A) dBA dba DBA'],
    ['m', 0.001, 'mm MM'],
    ['m', 0.01, 'cm CM Cm'],
    ['h', 1, 'h H hours HOURS Hours'],
    ['V/m', 1, 'V/m v/m V/M'],
  ];
  it.each(sloppy)('in capitals does not matter for %s times %d where no two units differ by them', (unit, factor, spellings) => {
    expect(spellings.split(' ').map((spelling) => value(`4 ${spelling}`, unit))).toEqual(spellings.split(' ').map(() => 4 * factor));
  });
});

describe('the cost of a text', () => {
  afterEach(() => vi.restoreAllMocks());

  /** Characters handed to regular expressions while a text is read: every use of one goes through exec. */
  function searched(text: string, unit: string): number {
    let characters = 0;
    const exec = Object.getOwnPropertyDescriptor(RegExp.prototype, 'exec')?.value as RegExp['exec'];
    const spy = vi.spyOn(RegExp.prototype, 'exec').mockImplementation(function (this: RegExp, given: string) {
      characters += given.length;
      return exec.call(this, given);
    });
    readQuantity(text, unit);
    spy.mockRestore();
    return characters;
  }

  it.each(['1', ' 1', '1,', '½', 'V=', 'about ', '(1', '\ufdfa', "'", '.5', '1/2 and a half '])(
    'is bounded for a million characters of %j: only the beginning of what is too long is looked at',
    (piece) => {
      expect(searched(`1${piece.repeat(1_000_000 / piece.length)}x`, 'W')).toBeLessThanOrEqual(2000);
    },
  );

  it('is bounded for any text that is not too long, since a letter unfolds into 18 at most', () => {
    const pieces = fc.constantFrom(
      '1',
      ',',
      '.',
      ' ',
      '(',
      'm',
      "'",
      '½',
      '²',
      '\ufdfa',
      ':',
      '=',
      'about ',
      ' and a half',
      '-',
      'h',
      'ft',
      '/',
    );
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: longestAnswer }), units, (parts, unit) => {
        expect(searched(parts.join('').slice(0, longestAnswer), unit)).toBeLessThan(longestAnswer * 18 * 100);
      }),
      { ...runs, numRuns: 500 },
    );
  });
});
