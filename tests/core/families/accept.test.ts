import { describe, expect, it } from 'vitest';
import { acceptNumber, tellTalesOf, type Key, type TellTale } from '../../../src/core/families/draw.js';
import { isApart, keyOf } from '../../../src/core/families/accept.js';
import { work } from '../../../src/core/families/work.js';
import { compiledFor } from './shipped.js';

// The rule: right from exact - max(belowAbs, belowRel × exact) to exact + max(aboveAbs, aboveRel × exact), or the exact answer to sigFigs figures.
const twoPerCent = { belowRel: 0.02, aboveRel: 0.02, belowAbs: 0, aboveAbs: 0, sigFigs: 2 };

describe('accepting a number', () => {
  it('takes both ends of the window and nothing beyond', () => {
    const key = keyOf(50, 'A', { mode: 'nearest', dp: 2 }, { ...twoPerCent, sigFigs: 0 });
    expect([49, 50, 51].map((value) => acceptNumber({ key }, value))).toEqual([true, true, true]);
    expect([48.99, 51.01, -50, 0, NaN, Infinity].map((value) => acceptNumber({ key }, value))).toEqual(Array(6).fill(false));
  });

  it('takes the larger of the relative and the absolute window, each side by itself', () => {
    const key = keyOf(2, 'h', { mode: 'nearest', dp: 1 }, { belowRel: 0.02, aboveRel: 0.1, belowAbs: 0.05, aboveAbs: 0.05, sigFigs: 0 });
    expect([key.acceptFrom, key.acceptTo]).toEqual([1.95, 2.2]);
  });

  it('takes the exact answer rightly rounded to two figures, though that lies outside 2 %, where it earns that', () => {
    // 2500 W from 240 V: 10.4167 A; "10" is 4 % low and is two figures rightly rounded, "11" is not.
    const exact = 2500 / 240;
    expect([10, 11].map((value) => acceptNumber({ key: keyOf(exact, 'A', { mode: 'nearest', dp: 2 }, twoPerCent) }, value))).toEqual([
      true,
      false,
    ]);
    expect(acceptNumber({ key: keyOf(exact, 'A', { mode: 'nearest', dp: 2 }, { ...twoPerCent, sigFigs: 0 }) }, 10)).toBe(false);
  });

  it('does not turn away a right reply for the noise of changing units', () => {
    const key = keyOf(0.3, 'A', { mode: 'nearest', dp: 2 }, { belowRel: 0, aboveRel: 0, belowAbs: 0, aboveAbs: 0, sigFigs: 0 });
    expect(acceptNumber({ key }, 0.1 + 0.2)).toBe(true);
  });

  it('never takes less power than asked for as more: a load is not rounded up', () => {
    const { key } = work(compiledFor('nf-coil-drum'), { W: 4, Q: 260 });
    expect([660, 641, 660.5, 661, 640].map((value) => acceptNumber({ key }, value))).toEqual([true, true, true, false, false]);
  });

  it('takes a ladder set by the quarter rule, by a quarter of its length and at 75 degrees', () => {
    const { key } = work(compiledFor('nf-ladder-base'), { H: 4 });
    // One out to four up, a ladder of length L with foot at L / 4 (tan of its angle is the root of 15), and 4 m / tan 75°.
    expect([1, 4 / Math.sqrt(15), 4 / Math.tan((75 * Math.PI) / 180)].map((value) => acceptNumber({ key }, value))).toEqual([
      true,
      true,
      true,
    ]);
    expect([4 / 3, 4 / 5].map((value) => acceptNumber({ key }, value))).toEqual([false, false]);
  });
});

describe('the separation rule', () => {
  const key: Key = keyOf(100, 'W', { mode: 'nearest', dp: 0 }, { belowRel: 0.02, aboveRel: 0.02, belowAbs: 0, aboveAbs: 0, sigFigs: 0 });

  it('leaves out what is inside one and a half times the window, not positive or not a number', () => {
    expect([97, 103, 100, 0, -50, NaN, Infinity].map((value) => isApart(key, value))).toEqual(Array(7).fill(false));
    expect([96.9, 103.1, 10, 1000].map((value) => isApart(key, value))).toEqual(Array(4).fill(true));
  });

  it('leaves out what the examiner would round into the window', () => {
    const coarse = keyOf(1, 'm', { mode: 'up', dp: 0 }, { belowRel: 0, aboveRel: 0, belowAbs: 0.1, aboveAbs: 0.1, sigFigs: 0 });
    expect([0.5, 0.01, 2.5].map((value) => isApart(coarse, value))).toEqual([false, false, true]);
  });

  it('leaves out what rounds to the rightly rounded answer', () => {
    const rounded = keyOf(
      1.4449,
      'A',
      { mode: 'nearest', sf: 3 },
      { belowRel: 0.001, aboveRel: 0.001, belowAbs: 0, aboveAbs: 0, sigFigs: 1 },
    );
    expect(isApart(rounded, 1.001)).toBe(false);
    expect(isApart(rounded, 1.01)).toBe(true);
  });
});

describe('which mistake a wrong reply betrays', () => {
  const drawn = work(compiledFor('nf-current-from-power'), { P: 1150 });
  const names = (value: number): string[] => tellTalesOf(drawn, value).map(({ name }) => name);

  it('finds the mistake from its value, also when the reply was rounded', () => {
    // 1150 W from 230 V: 1150/120 = 9.583, 1150/(230 × 1.414) = 3.536.
    expect([names(9.583), names(9.6), names(9.58), names(3.5), names(3.536)]).toEqual([
      ['other-supply'],
      ['other-supply'],
      ['other-supply'],
      ['peak-voltage'],
      ['peak-voltage'],
    ]);
    expect(names(264500)).toEqual(['multiplied-not-divided']);
  });

  it('says nothing of a right reply, of one that no mistake leads to, and of what is not a number', () => {
    expect([names(5), names(4.95), names(6.5), names(NaN), names(Infinity)]).toEqual([[], [], [], [], []]);
  });

  it('gives both of two mistakes with one value, and the nearer of two that are close', () => {
    const fuse = work(compiledFor('nf-plug-fuse-choice'), { P: 2050 });
    expect(tellTalesOf(fuse, 13).map(({ name }) => name)).toEqual(['one-size-up', 'always-biggest']);
    const tale = (name: string, value: number): TellTale => ({ name, label: name, tell: name, direction: 'wrong', value, unit: 'A' });
    const close = { key: drawn.key, tellTales: [tale('a', 100), tale('b', 101)] };
    expect(tellTalesOf(close, 100.8).map(({ name }) => name)).toEqual(['b']);
  });
});
