import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nextMeeting, weekdayName } from '../../../src/core/classes/meeting.js';
import { weekdayOf } from '../../../src/core/plan/settings.js';

/** 26 November 2026 was a Thursday; as a day number, 20,783 (from a calendar: 56 years of 365 days, 14 leap days, 329 days into the year). */
const thursday = 56 * 365 + 14 + 329;
const evening = { meetsOn: 4, meetsAt: '19:30' };

describe('the next meeting of a class', () => {
  it('is told by the name of its weekday', () => {
    expect(weekdayName(thursday)).toBe('Thursday');
  });

  it.each([
    ['on the day itself, before it begins', thursday, 9 * 60, thursday],
    ['on the day itself, while it is on', thursday, 21 * 60 + 30, thursday],
    ['a week on, once the evening is over', thursday, 22 * 60 + 1, thursday + 7],
    ['on the coming Thursday, seen from Friday', thursday + 1, 0, thursday + 7],
    ['tomorrow, seen from Wednesday', thursday - 1, 23 * 60, thursday],
  ])('is %s', (_when, today, minute, expected) => {
    expect(nextMeeting(evening, today, minute)).toBe(expected);
  });

  it('is none where the class meets on no fixed day', () => {
    expect(nextMeeting({ meetsOn: null, meetsAt: null }, thursday, 0)).toBeNull();
  });

  it('always lies on the class’s weekday, today or within a week', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 6 }),
        fc.integer({ min: 0, max: 40_000 }),
        fc.integer({ min: 0, max: 1439 }),
        (meetsOn, today, minute) => {
          const day = nextMeeting({ meetsOn, meetsAt: '19:30' }, today, minute) as number;
          expect(weekdayOf(day)).toBe(meetsOn);
          expect(day - today).toBeGreaterThanOrEqual(0);
          expect(day - today).toBeLessThanOrEqual(7);
        },
      ),
    );
  });
});
