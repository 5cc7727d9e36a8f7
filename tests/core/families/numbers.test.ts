import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fixed, gridSize, gridValue, plain, roundTo, tidy } from '../../../src/core/families/numbers.js';

// Expected values by hand, in decimal.
describe('rounding for people', () => {
  it.each([
    [2.125, 2, 2.13],
    [1.005, 2, 1.01],
    [0.145, 2, 0.15],
    [4.125, 2, 4.13],
    [75.409836, 0, 75],
    [0.5, 0, 1],
    [-2.125, 2, -2.13],
  ])('takes %d to %i decimals as %d, halves away from zero', (value, dp, expected) => {
    expect(roundTo(value, { mode: 'nearest', dp })).toBe(expected);
  });

  it.each([
    [247.5, 3, 248],
    [0.094174523, 3, 0.0942],
    [17.28, 3, 17.3],
    [999.6, 3, 1000],
    [12345, 2, 12000],
    [0.000123456, 2, 0.00012],
  ])('takes %d to %i significant figures as %d', (value, sf, expected) => {
    expect(roundTo(value, { mode: 'nearest', sf })).toBe(expected);
  });

  it('rounds up what keeps people safe and down what could harm, but not for the noise of double precision', () => {
    expect(roundTo(15.25, { mode: 'up', dp: 1 })).toBe(15.3);
    expect(roundTo(0.1 + 0.2, { mode: 'up', dp: 1 })).toBe(0.3);
    expect(roundTo(1.1 + 2.2, { mode: 'up', dp: 1 })).toBe(3.3);
    expect(roundTo(849.9, { mode: 'down', dp: 0 })).toBe(849);
    expect(roundTo(0.3 - 0.1, { mode: 'down', dp: 1 })).toBe(0.2);
  });

  it('leaves alone what is not a number', () => {
    expect(roundTo(NaN, { mode: 'nearest', dp: 1 })).toBe(NaN);
    expect(roundTo(Infinity, { mode: 'nearest', sf: 2 })).toBe(Infinity);
    expect(roundTo(0, { mode: 'nearest', sf: 2 })).toBe(0);
  });
});

describe('printing numbers', () => {
  it('prints four decimals at most, without trailing zeros', () => {
    expect([3.3, 230, 0.34, 1.23456789, 0.00001, 5.5].map(plain)).toEqual(['3.3', '230', '0.34', '1.2346', '0', '5.5']);
  });

  it('prints just the decimals that are asked for', () => {
    expect([fixed(5, 2), fixed(1.375, 2), fixed(0.000047, 6), fixed(920, 0), fixed(13, 2)]).toEqual([
      '5.00',
      '1.38',
      '0.000047',
      '920',
      '13.00',
    ]);
  });
});

describe('grids of input values', () => {
  it('are exact in decimal: 2 + 13 × 0.1 is 3.3', () => {
    expect(gridValue({ min: 2, step: 0.1 }, 13)).toBe(3.3);
    expect(gridValue({ min: 0.5, step: 0.25 }, 3)).toBe(1.25);
    expect(gridValue({ min: 0.05, step: 0.1 }, 2)).toBe(0.25);
    expect(gridValue({ min: 1e-7, step: 1e-7 }, 2)).toBe(3e-7);
  });

  it('count both ends when the last step falls on the largest value', () => {
    expect(gridSize({ min: 2, max: 7.2, step: 0.1 })).toBe(53);
    expect(gridSize({ min: 600, max: 2900, step: 50 })).toBe(47);
    expect(gridSize({ min: 0, max: 1, step: 0.3 })).toBe(4);
    expect(gridSize({ min: 5, max: 5, step: 1 })).toBe(1);
  });

  it('print every value as somebody would write it', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 3 }),
        fc.integer({ min: 0, max: 999 }),
        fc.integer({ min: 1, max: 99 }),
        fc.integer({ min: 0, max: 500 }),
        (places, min, step, position) => {
          const unit = 10 ** places;
          const exact = (min + step * position) / unit;
          expect(gridValue({ min: min / unit, step: step / unit }, position)).toBe(exact);
        },
      ),
      { seed: 20261125, numRuns: 500 },
    );
  });

  it('tidy drops the noise of double precision and nothing else', () => {
    expect(tidy(0.1 + 0.2)).toBe(0.3);
    expect(tidy(11.304347826086957)).toBe(11.3043478261);
    expect(tidy(NaN)).toBe(NaN);
  });
});

describe('the short ways of rounding', () => {
  // As the decimal is written: printing to twelve figures, then moving the point in the text.
  const shifted = (value: number, places: number): number => {
    const [mantissa, exponent] = String(value).split('e');
    return Number(`${mantissa}e${Number(exponent ?? 0) + places}`);
  };
  const printed = (value: number): number => Number(value.toPrecision(12));
  const written = (value: number, places: number, mode: 'nearest' | 'up' | 'down'): number => {
    const cut = { nearest: Math.round, up: Math.ceil, down: Math.floor }[mode];
    return Math.sign(value) * shifted(cut(shifted(printed(Math.abs(value)), places)), -places);
  };
  const few = fc.tuple(fc.integer({ min: -10_000_000, max: 10_000_000 }), fc.integer({ min: 0, max: 8 })).map(([n, p]) => n / 10 ** p);
  const any = fc.oneof(
    few,
    few.map((n) => n * 1.1),
    few.map((n) => n / 3),
    fc.double({ noNaN: true, min: -1e13, max: 1e13 }),
  );

  it('give what printing and reading back gives', () => {
    let looked = 0;
    fc.assert(
      fc.property(any, fc.integer({ min: 0, max: 9 }), fc.constantFrom('nearest', 'up', 'down'), (value, dp, mode) => {
        expect(tidy(value) + 0).toBe(printed(value) + 0);
        expect(roundTo(value, { mode, dp }) + 0).toBe(written(value, dp, mode) + 0);
        looked += 1;
      }),
      { seed: 20261126, numRuns: 20_000 },
    );
    expect(looked).toBe(20_000);
  });
});
