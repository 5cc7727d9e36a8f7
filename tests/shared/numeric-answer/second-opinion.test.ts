import Qty from 'js-quantities';
import { describe, expect, it } from 'vitest';
import { baseUnits, prefixes } from '../../../shared/numeric-answer/base-units.js';
import { prefixed } from '../../../shared/numeric-answer/spelling.js';
import { convert, findUnit, toSi } from '../../../shared/numeric-answer/units.js';
import type { Unit } from '../../../shared/numeric-answer/units.js';

/** The sizes of the units, held against an independent table: the package js-quantities 1.8.0. */

/** What that table calls a unit, where it is not the symbol. */
const theirName: Readonly<Record<string, string>> = {
  Ω: 'Ohm',
  µF: 'uF',
  '°': 'deg',
  K: 'tempK',
  '°C': 'tempC',
  '°F': 'tempF',
  'km/h': 'km/hour',
};

/**
 * Units the other table lacks (or, for dB(A) and its like, takes for something else). Their sizes are held against the publications in
 * the test of the units.
 */
const notThere = ['', 'dBi', 'dBd', 'dBm', 'dBW', 'dB(A)', 'dB(C)', 'kgf'];

/** Where it holds a rounded factor: NIST SP 811, appendix B.8 has oz 28.349 523 125 g, psi 6894.757 293 168 Pa, lbf 4.448 221 615 260 5 N. */
/** And temperatures: ours keep 12 figures, so that 68 °F is 20 °C and not 20.000000000000057 °C. */
const rounded: Readonly<Record<string, number>> = { oz: 1e-7, psi: 1e-6, lbf: 1e-6, '°F': 5e-12, '°C': 5e-12, K: 5e-12 };

const theirs = (unit: Unit, prefix = ''): string => {
  const base = unit.base?.symbol ?? unit.symbol;
  return `${prefix}${theirName[base] ?? base}`;
};
const isTemperature = (unit: Unit): boolean => unit.quantity === 'temperature';

interface Known {
  readonly unit: Unit;
  readonly name: string;
  readonly within: number;
}
const known: Known[] = baseUnits
  .filter((base) => !notThere.includes(base.symbol))
  .flatMap((base) =>
    [null, ...prefixes.filter((prefix) => base.prefixes.includes(prefix.letter))].map((prefix) => {
      const unit = prefixed(base, prefix);
      return { unit, name: theirs(unit, prefix?.letter), within: rounded[base.symbol] ?? 1e-12 };
    }),
  );

const divided: readonly (readonly [ours: string, theirs: string])[] = [
  ['mm²', 'mm2'],
  ['cm²', 'cm2'],
  ['ft²', 'ft2'],
  ['in²', 'in2'],
  ['m³', 'm3'],
  ['W/m²', 'W/m2'],
  ['mW/cm²', 'mW/cm2'],
  ['µW/cm²', 'uW/cm2'],
  ['V/m', 'V/m'],
  ['kV/m', 'kV/m'],
  ['A/m', 'A/m'],
  ['mA/m', 'mA/m'],
  ['A/mm²', 'A/mm2'],
  ['ohm/km', 'Ohm/km'],
  ['mΩ/m', 'mOhm/m'],
  ['W/kg', 'W/kg'],
  ['m/s', 'm/s'],
  ['mile/s', 'mile/s'],
  ['ft/min', 'ft/min'],
  ['kg/m³', 'kg/m3'],
  ['g/L', 'g/l'],
  ['dB/100 m', 'dB/hm'],
];

const apart = (ours: number, other: number): number => Math.abs(ours / other - 1);

describe('the units against another table', () => {
  it.each(known.filter(({ unit }) => !isTemperature(unit)).map((entry) => [entry.unit.symbol, entry] as const))(
    'agree on the size of one %s',
    (_symbol, { unit, name, within }) => {
      expect(apart(toSi(1, unit), Qty(1, name).baseScalar)).toBeLessThan(within);
    },
  );

  it('agree on every conversion between two units of a kind', () => {
    const wrong: string[] = [];
    let pairs = 0;
    for (const from of known) {
      for (const to of known) {
        if (from.unit.quantity !== to.unit.quantity) continue;
        pairs += 1;
        const value = 37.5;
        const difference = apart(convert(value, from.unit, to.unit), Qty(value, from.name).to(to.name).scalar);
        if (!(difference <= Math.max(from.within, to.within))) wrong.push(`${from.name} to ${to.name}: ${difference}`);
      }
    }
    expect(wrong).toEqual([]);
    expect(pairs).toBeGreaterThan(1000);
  });

  it.each(divided)('agree on the size of one %s', (ours, name) => {
    const unit = findUnit(ours);
    expect(unit === null ? NaN : apart(toSi(1, unit), Qty(1, name).baseScalar)).toBeLessThan(1e-12);
  });

  it('take none for granted: the list of those the other table lacks names units that exist', () => {
    expect(notThere.filter((symbol) => !baseUnits.some((base) => base.symbol === symbol))).toEqual([]);
    expect(known.length).toBeGreaterThan(150);
  });
});
