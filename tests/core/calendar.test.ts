import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayNumber, dayWords, isoDay, isTimeZone, shortDate, whenWords } from '../../src/core/calendar.js';

const at = (iso: string) => Date.parse(iso);

describe('day numbers', () => {
  it('count from 1970-01-01, which was a Thursday', () => {
    expect(dayNumber(0, 'UTC')).toBe(0);
    expect(dayWords(0)).toBe('Thursday 1 January 1970');
  });

  it('belong to the calendar of the time zone, not to the server', () => {
    // 00:30 British summer time is 23:30 UTC of the day before.
    const moment = at('2026-06-30T23:30:00Z');
    expect(isoDay(dayNumber(moment, 'UTC'))).toBe('2026-06-30');
    expect(isoDay(dayNumber(moment, 'Europe/London'))).toBe('2026-07-01');
    expect(isoDay(dayNumber(moment, 'America/New_York'))).toBe('2026-06-30');
    expect(isoDay(dayNumber(moment, 'Pacific/Auckland'))).toBe('2026-07-01');
  });

  it('step by one over the nights on which the clocks change', () => {
    // Clocks in the United Kingdom go back on the last Sunday of October: 25 October 2026 has 25 hours.
    const evening = dayNumber(at('2026-10-24T22:30:00Z'), 'Europe/London');
    expect(dayNumber(at('2026-10-25T23:30:00Z'), 'Europe/London')).toBe(evening + 1);
    expect(dayNumber(at('2026-10-26T00:30:00Z'), 'Europe/London')).toBe(evening + 2);
  });

  it('never go back as time goes on, in any zone', () => {
    const zones = fc.constantFrom('Europe/London', 'America/Los_Angeles', 'Asia/Kolkata', 'Australia/Lord_Howe', 'Pacific/Apia', 'UTC');
    const moment = fc.integer({ min: at('2000-01-01'), max: at('2060-01-01') });
    fc.assert(
      fc.property(zones, moment, fc.integer({ min: 0, max: 90_000_000 }), (zone, first, later) => {
        const gap = dayNumber(first + later, zone) - dayNumber(first, zone);
        expect(gap).toBeGreaterThanOrEqual(0);
        expect(gap).toBeLessThanOrEqual(2);
      }),
      { seed: 20261125 },
    );
  });
});

describe('words', () => {
  it('says dates as people do', () => {
    const day = dayNumber(at('2026-11-25T12:00:00Z'), 'UTC');
    expect(dayWords(day)).toBe('Wednesday 25 November 2026');
    expect(dayWords(day, 'short')).toBe('Wed 25 Nov');
    expect(shortDate('2026-11-05')).toBe('5 Nov 2026');
    expect([0, 1, 3, 7].map((gap) => whenWords(day + gap, day))).toEqual(['today', 'tomorrow', 'in 3 days', 'on Wed 2 Dec']);
  });
});

describe('time zone names', () => {
  it('takes those there are and refuses all else', () => {
    expect(isTimeZone('Europe/London')).toBe(true);
    expect(isTimeZone('Nether/Wobbling')).toBe(false);
    expect(isTimeZone('')).toBe(false);
    expect(isTimeZone('../etc/passwd')).toBe(false);
    expect(isTimeZone('x'.repeat(500))).toBe(false);
  });
});
