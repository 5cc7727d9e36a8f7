import { describe, expect, it } from 'vitest';
import { convert, findUnit, toSi } from '../../../shared/numeric-answer/units.js';
import type { Unit } from '../../../shared/numeric-answer/units.js';

const unit = (name: string): Unit => {
  const found = findUnit(name);
  if (found === null) throw new Error(`no unit ${name}`);
  return found;
};

/**
 * Coherent SI value of one unit. BIPM, SI Brochure, 9th edition: table 7 (prefixes), table 8 (min, h, d, °, L, t) and section 2.3.4 (°C);
 * NIST SP 811 (2008), appendix B.8: the others, with as many figures as printed there.
 */
const published: readonly (readonly [string, number, string])[] = [
  ['pF', 1e-12, 'SI'],
  ['nF', 1e-9, 'SI'],
  ['µF', 1e-6, 'SI'],
  ['mA', 1e-3, 'SI'],
  ['cm', 1e-2, 'SI'],
  ['dm', 1e-1, 'SI'],
  ['hPa', 1e2, 'SI'],
  ['kW', 1e3, 'SI'],
  ['MHz', 1e6, 'SI'],
  ['GHz', 1e9, 'SI'],
  ['min', 60, 'SI'],
  ['h', 3600, 'SI'],
  ['d', 86400, 'SI'],
  ['L', 1e-3, 'SI'],
  ['t', 1e3, 'SI'],
  ['mm²', 1e-6, 'SI'],
  ['g', 1e-3, 'SI'],
  ['Ah', 3600, 'NIST'],
  ['Wh', 3600, 'NIST'],
  ['kWh', 3.6e6, 'NIST'],
  ['ft', 0.3048, 'NIST'],
  ['in', 0.0254, 'NIST'],
  ['yd', 0.9144, 'NIST'],
  ['mile', 1609.344, 'NIST'],
  ['ft²', 0.09290304, 'NIST'],
  ['in²', 6.4516e-4, 'NIST'],
  ['lb', 0.45359237, 'NIST'],
  ['kgf', 9.80665, 'NIST'],
  ['bar', 1e5, 'NIST'],
  ['mph', 0.44704, 'NIST'],
  ['W/m²', 1, 'SI'],
  ['mW/cm²', 10, 'SI: 1e-3 / 1e-4'],
  ['ohm/km', 1e-3, 'SI'],
  ['%', 0.01, 'SI Brochure 5.4.7'],
  ['ppm', 1e-6, 'SI Brochure 5.4.7'],
];

describe('the units', () => {
  it.each(published)('hold one %s as %d in SI (%s)', (name, si) => {
    expect(toSi(1, unit(name))).toBe(si);
  });

  it.each([
    // NIST SP 811 prints these rounded to seven figures.
    ['oz', 0.02834952],
    ['degree', 0.01745329],
    ['psi', 6894.757],
    ['lbf', 4.448222],
    ['km/h', 0.2777778],
    ['rpm', 0.1047198],
    ['ohm/1000 ft', 1 / 304.8],
  ])('hold one %s as about %d in SI', (name, si) => {
    expect(toSi(1, unit(name)) / si).toBeCloseTo(1, 6);
  });

  it.each([
    // NIST SP 811, B.8: t/°F = 1.8 t/°C + 32, T/K = t/°C + 273.15.
    [0, '°C', '°F', 32],
    [100, '°C', '°F', 212],
    [-40, '°F', '°C', -40],
    [68, '°F', '°C', 20],
    [32, '°F', '°C', 0],
    [0, '°F', 'K', 255.372222222],
    [25, '°C', 'K', 298.15],
    // dBi = dBd + 2.15 (a half-wave dipole over an isotropic antenna); 0 dBW = 30 dBm.
    [7.5, 'dBd', 'dBi', 9.65],
    [0, 'dBW', 'dBm', 30],
    [45, 'ft', 'm', 13.716],
    [90, 'min', 'h', 1.5],
    [1, 'Wh', 'J', 3600],
  ])('convert %d %s to %s as %d', (value, from, to, expected) => {
    expect(convert(value, unit(from), unit(to))).toBe(expected);
  });

  it('do not convert between kinds', () => {
    expect(convert(1, unit('W'), unit('VA'))).toBeNaN();
    expect(convert(1, unit('A'), unit('Ah'))).toBeNaN();
  });

  it.each([
    ['', ''],
    ['1', ''],
    ['ohm', 'Ω'],
    ['milliohm', 'mΩ'],
    ['kilohm', 'kΩ'],
    ['microfarad', 'µF'],
    ['mm2', 'mm²'],
    ['degree', '°'],
    ['dB(A)', 'dB(A)'],
    ['W/m2', 'W/m²'],
    ['watts per square metre', 'W/m²'],
    ['ohm/1000 ft', 'Ω/1000 ft'],
    ['mile/s', 'mile/s'],
    ['km/s', 'km/s'],
    ['dB/100 m', 'dB/100 m'],
    ['C', 'C'],
    ['K', 'K'],
    ['MA', 'MA'],
  ])('know the name %j, printed %j', (name, symbol) => {
    expect(unit(name).symbol).toBe(symbol);
  });

  it.each(['bananas', 'm/bananas', 'W/W', 'kft', 'x'.repeat(100), '/', 'm//s', '__proto__'])('have no unit %j', (name) => {
    expect(findUnit(name)).toBeNull();
  });

  it('name prefixed ohms as people say them', () => {
    expect([unit('kΩ').name, unit('MΩ').name]).toEqual(['kilohms', 'megohms']);
  });
});
