import { describe, expect, it } from 'vitest';
import { keyOf, type TellTale } from '../../src/core/families/accept.js';
import { markNumber, slipWords } from '../../src/core/marking.js';
import { readQuantity } from '../../shared/numeric-answer/parse.js';

const window = { belowRel: 0.02, aboveRel: 0.02, belowAbs: 0, aboveAbs: 0, sigFigs: 2 };
const nearest = { mode: 'nearest', sf: 3 } as const;
const doubled: TellTale = { name: 'doubled', label: 'Doubled it', tell: 'No need.', direction: 'wrong', value: 1000, unit: 'W' };
const draw = { key: keyOf(500, 'W', nearest, window), tellTales: [doubled] };

const marked = (typed: string) => {
  const reading = readQuantity(typed, 'W');
  if (!reading.understood) throw new Error(reading.message);
  return markNumber(draw, reading.value);
};

describe('marking a typed number', () => {
  it.each(['500', '500 W', '0.5 kW', '500000 mW', '5 x 10^2', '495', '510', '0.0005 MW', '0,50 kW'])('takes %j for 500 W', (typed) => {
    expect(marked(typed)).toEqual({ right: true, score: 1, tellTales: [], slip: null });
  });

  it.each([
    ['500 kW', 1000, 'prefix'],
    ['0.5', 0.001, 'prefix'],
    ['500 mW', 0.001, 'prefix'],
    ['500 MW', 1_000_000, 'prefix'],
    ['0.505 mW', 0.000001, 'prefix'],
    ['5000', 10, 'point'],
    ['50 W', 0.1, 'point'],
    ['50 kW', 100, 'point'],
    ['5 W', 0.01, 'point'],
    ['4.95', 0.01, 'point'],
  ])('finds the figures of %j right and the power of ten wrong, %d times', (typed, factor, kind) => {
    expect(marked(typed)).toEqual({ right: false, score: 0, tellTales: [], slip: { factor, kind } });
  });

  it.each(['0', '-500', '250', '520', '480', '5 000 000', '0.05', '600 kW', '5e300'])('finds no slip in %j', (typed) => {
    expect(marked(typed)).toEqual({ right: false, score: 0, tellTales: [], slip: null });
  });

  it('names a known mistake first', () => {
    expect(marked('1000').tellTales).toEqual([doubled]);
  });

  it('finds no slip in other figures that a wide window would hold', () => {
    // Right from 5 m to 50 m, "at least": 0.4 m is not 5 m with a slipped point, though 40 m would be right.
    const key = keyOf(5, 'm', { mode: 'up', dp: 0 }, { belowRel: 0, aboveRel: 9, belowAbs: 0, aboveAbs: 0, sigFigs: 0 });
    expect([0.4, 4].map((value) => markNumber({ key, tellTales: [] }, value).slip)).toEqual([null, null]);
    expect(markNumber({ key, tellTales: [] }, 0.5).slip).toEqual({ factor: 0.1, kind: 'point' });
  });

  it('works for an answer below nought, and for none at all', () => {
    const minus = { key: keyOf(-3, 'dBm', { mode: 'nearest', dp: 0 }, window), tellTales: [] };
    expect(markNumber(minus, -30).slip).toEqual({ factor: 10, kind: 'point' });
    expect(markNumber(minus, 3).slip).toBeNull();
    const nought = { key: keyOf(0, 'dB', { mode: 'nearest', dp: 0 }, window), tellTales: [] };
    expect(markNumber(nought, 5).slip).toBeNull();
  });
});

describe('what is said of a slip', () => {
  it.each([
    [1000, 'prefix', 'a thousand times too large: look again at the unit and its prefix, such as k for kilo or m for milli.'],
    [0.000001, 'prefix', 'a million times too small: look again at the unit and its prefix, such as k for kilo or m for milli.'],
    [10, 'point', 'ten times too large: the decimal point slipped by one place. Check the unit as well.'],
    [0.01, 'point', 'a hundred times too small: the decimal point slipped by two places. Check the unit as well.'],
  ] as const)('names how far, for %d (%s)', (factor, kind, words) => {
    expect(slipWords({ factor, kind }, false)).toEqual({ label: 'Your figures are right', tell: `The answer came out ${words}` });
  });

  it('gives neither size nor direction away before another try', () => {
    const early = [1000, 0.001, 10, 0.01].map((factor) => slipWords({ factor, kind: factor === 10 ? 'point' : 'prefix' }, true));
    expect(new Set(early.map(({ label, tell }) => `${label}: ${tell}`))).toEqual(
      new Set(['The figures look right: Check the unit and its prefix, and the decimal point.']),
    );
  });
});
