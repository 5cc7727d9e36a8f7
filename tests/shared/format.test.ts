import { describe, expect, it } from 'vitest';
import { formatNumber, formatQuantity, roundDecimals, roundSignificant } from '../../shared/format.js';

/** ISO 80000-1, 7.3: groups of three parted by a small space, a real minus sign, a space between number and unit. */
describe('printing numbers', () => {
  it.each([
    [0, '0'],
    [5, '5'],
    [0.2608695652, '0.26087'],
    [13.043478, '13.0435'],
    [-4.5, '−4.5'],
    [1050, '1050'],
    [12500, '12\u202f500'],
    [1234567, '1\u202f234\u202f570'],
    [123456.789, '123\u202f457'],
    [0.0001, '0.0001'],
    [0.00000015, '1.5\u202f×\u202f10⁻⁷'],
    [2e15, '2\u202f×\u202f10¹⁵'],
    [NaN, '—'],
    [Infinity, '—'],
  ])('prints %d as %j', (value, text) => {
    expect(formatNumber(value)).toBe(text);
  });

  it.each([
    [5, 2, '5.00'],
    [1.005, 2, '1.01'],
    [2.675, 2, '2.68'],
    [-0.125, 2, '−0.13'],
    [-0.001, 2, '0.00'],
    [12345.678, 1, '12\u202f345.7'],
    [2.5, 0, '3'],
  ])('prints %d with %d decimals as %j, fives going away from nought', (value, decimals, text) => {
    expect(formatNumber(value, { decimals })).toBe(text);
  });

  it.each([
    [11.304348, 3, '11.3'],
    [0.195652, 2, '0.2'],
    [0.195652, 3, '0.196'],
    [99.96, 3, '100'],
    [1.2345e-7, 3, '1.23\u202f×\u202f10⁻⁷'],
  ])('prints %d to %d figures as %j', (value, significant, text) => {
    expect(formatNumber(value, { significant })).toBe(text);
  });

  it.each([
    [2.2, 'kW', '2.2\u202fkW'],
    [23, 'ohm', '23\u202fΩ'],
    [75, 'degree', '75°'],
    [20, '°C', '20\u202f°C'],
    [50, '%', '50\u202f%'],
    [0.5, '', '0.5'],
    [2.5, 'mm2', '2.5\u202fmm²'],
    [7, 'no unit of ours', '7\u202fno unit of ours'],
  ])('prints %d in %s as %j', (value, unit, text) => {
    expect(formatQuantity(value, unit)).toBe(text);
  });

  it('rounds on the decimal digits', () => {
    expect([roundDecimals(1.005, 2), roundDecimals(-1.005, 2), roundDecimals(1e21, 2), roundDecimals(1234, -2)]).toEqual([
      1.01, -1.01, 1e21, 1200,
    ]);
    expect([roundSignificant(0, 3), roundSignificant(0.00012345, 3), roundSignificant(99999, 2)]).toEqual([0, 0.000123, 100000]);
  });
});
