import { describe, expect, it } from 'vitest';
import { keyOf, type TellTale } from '../../../src/core/families/accept.js';
import { choiceOptions, fourOptions } from '../../../src/core/families/options.js';
import { work } from '../../../src/core/families/work.js';
import { compiledFor } from './shipped.js';

const key = keyOf(10, 'A', { mode: 'nearest', dp: 1 }, { belowRel: 0.02, aboveRel: 0.02, belowAbs: 0, aboveAbs: 0, sigFigs: 2 });
const tales = (...values: number[]): TellTale[] =>
  values.map((value, i) => ({ name: `m${i}`, label: '', tell: '', direction: 'wrong', value, unit: 'A' }));
const valuesOf = (...values: number[]): (number | undefined)[] | undefined =>
  fourOptions({ kind: 'number', key, tellTales: tales(...values) })?.map(({ value }) => value);

// The rule: list order, a tenth to ten times the answer, more than 3 % apart, and one from each side where there is one.
describe('four options for a numeric draw', () => {
  it('takes the first three mistakes in list order, and sets all in order of size', () => {
    expect(valuesOf(20, 5, 30, 40)).toEqual([5, 10, 20, 30]);
  });

  it('skips what is below a tenth or above ten times, and what is within 3 % of one already taken', () => {
    expect(valuesOf(0.9, 101, 20, 20.5, 5, 30)).toEqual([5, 10, 20, 30]);
    expect(valuesOf(1, 100, 5)).toEqual([1, 5, 10, 100]);
  });

  it('changes the last for the first from the other side when all three lie on one', () => {
    expect(valuesOf(20, 30, 40, 50, 5, 4)).toEqual([5, 10, 20, 30]);
    expect(valuesOf(20, 30, 40, 50)).toEqual([10, 20, 30, 40]);
  });

  it('is not made of fewer than three mistakes, nor for a choice', () => {
    expect(valuesOf(20, 30)).toBeUndefined();
    expect(fourOptions({ kind: 'choice', key, tellTales: tales(20, 30, 5) })).toBeNull();
  });

  it('prints each as somebody who made the mistake would, and names the mistake', () => {
    // 1000 W from 230 V is 4.35 A; the first three mistakes are 1000/1000, 1000/(230 × 1.414) = 3.074 and 1000/120 = 8.333.
    const worked = work(compiledFor('nf-current-from-power'), { P: 1000 });
    expect(fourOptions(worked)).toEqual([
      { value: 1, text: '1 A', tellTale: 'kilowatts-as-amps' },
      { value: 3.07, text: '3.07 A', tellTale: 'peak-voltage' },
      { value: 4.35, text: '4.35 A', tellTale: null },
      { value: 8.33, text: '8.33 A', tellTale: 'other-supply' },
    ]);
  });

  it('keeps two figures of a mistake that the printed precision would swallow', () => {
    const whole = keyOf(5, 'mA', { mode: 'nearest', dp: 0 }, { belowRel: 0.02, aboveRel: 0.02, belowAbs: 0, aboveAbs: 0, sigFigs: 0 });
    expect(fourOptions({ kind: 'number', key: whole, tellTales: tales(1.49, 20.2, 30) })?.map(({ text }) => text)).toEqual([
      '1.5 mA',
      '5 mA',
      '20 mA',
      '30 mA',
    ]);
  });
});

describe('the options of a choice', () => {
  it('are the whole list when it is short, in order of size', () => {
    expect(choiceOptions(key, tales(13), [13, 3, 10, 5])).toEqual([
      { value: 3, text: '3 A', tellTale: null },
      { value: 5, text: '5 A', tellTale: null },
      { value: 10, text: '10 A', tellTale: null },
      { value: 13, text: '13 A', tellTale: 'm0' },
    ]);
  });

  it('are the key, the named mistakes and then neighbours when the list is long', () => {
    expect(choiceOptions(key, tales(40), [1, 2, 4, 6, 10, 16, 25, 40]).map(({ value }) => value)).toEqual([6, 10, 16, 40]);
  });
});
