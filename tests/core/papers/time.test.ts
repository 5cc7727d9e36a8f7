import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { deadlineOf, minutesLeft, stateOf, type SittingTimes } from '../../../src/core/papers/time.js';

const start = Date.UTC(2026, 10, 26, 19, 0, 0, 123);
const minute = 60_000;

// Worked by hand: 35 minutes are 2,100,000 ms; a quarter more 43 min 45 s, half as much again 52 min 30 s, twice 70 min.
describe('the deadline of a sitting', () => {
  it.each([
    [35, 0, 2_100_000],
    [35, 25, 2_625_000],
    [35, 50, 3_150_000],
    [35, 100, 4_200_000],
    [25, 25, 1_875_000],
    [25, 50, 2_250_000],
    [1, 25, 75_000],
    [50, 10, 3_300_000],
  ])('of %d minutes with %d %% more is %d milliseconds after the start', (minutes, extra, expected) => {
    expect(deadlineOf(start, minutes, extra, null) - start).toBe(expected);
  });

  it('is the end of the class paper where that comes first, extra time or not', () => {
    const closesAt = start + 20 * minute;
    expect([0, 25, 50].map((extra) => deadlineOf(start, 35, extra, closesAt))).toEqual([closesAt, closesAt, closesAt]);
  });

  it('is one’s own where the class paper ends later, to the millisecond', () => {
    const own = start + 2_625_000;
    expect([own - 1, own, own + 1].map((closesAt) => deadlineOf(start, 35, 25, closesAt))).toEqual([own - 1, own, own]);
  });

  it('is past already for who starts after the end of the class paper', () => {
    const deadlineAt = new Date(deadlineOf(start, 35, 0, start - 1));
    expect(stateOf({ startedAt: new Date(start), deadlineAt, handedInAt: null }, start)).toBe('over');
  });
});

describe('the state of a sitting', () => {
  const deadline = start + 35 * minute;
  const running: SittingTimes = { startedAt: new Date(start), deadlineAt: new Date(deadline), handedInAt: null };

  it.each([
    ['at the start', start, 'running'],
    ['a millisecond before the deadline', deadline - 1, 'running'],
    ['at the deadline', deadline, 'running'],
    ['a millisecond after the deadline', deadline + 1, 'over'],
    ['a year later', deadline + 365 * 24 * 60 * minute, 'over'],
  ])('%s is as it should be', (_when, now, state) => {
    expect(stateOf(running, now)).toBe(state);
  });

  it('is handed in, once it is, before the deadline and after', () => {
    const handedIn = { ...running, handedInAt: new Date(deadline - minute) };
    expect([start, deadline, deadline + 1].map((now) => stateOf(handedIn, now))).toEqual(['handed-in', 'handed-in', 'handed-in']);
  });

  it('is waiting until it starts, at whatever time', () => {
    const waiting = { startedAt: null, deadlineAt: null, handedInAt: null };
    expect([0, start, deadline + 1].map((now) => stateOf(waiting, now))).toEqual(['waiting', 'waiting', 'waiting']);
  });
});

describe('the minutes left', () => {
  const deadlineAt = new Date(start);

  it.each([
    [35 * minute + 1, 36],
    [35 * minute, 35],
    [35 * minute - 1, 35],
    [minute + 1, 2],
    [minute, 1],
    [minute - 1, 1],
    [1, 1],
    [0, 0],
    [-1, 0],
    [-90 * minute, 0],
  ])('with %d milliseconds to go are %d', (left, minutes) => {
    expect(minutesLeft(deadlineAt, start - left)).toBe(minutes);
  });

  it('never say less than there is, nor as much as a minute more', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 600 * minute }), (left) => {
        const more = minutesLeft(deadlineAt, start - left) * minute - left;
        expect(more).toBeGreaterThanOrEqual(0);
        expect(more).toBeLessThan(minute);
      }),
      { seed: 20261126, numRuns: 500 },
    );
  });
});
