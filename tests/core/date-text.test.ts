import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readTime } from '../../src/core/date-text.js';

describe('a time of day', () => {
  it.each([
    ['19:30', '19:30'],
    ['19.30', '19:30'],
    ['1930', '19:30'],
    ['19h30', '19:30'],
    ['7:05', '07:05'],
    ['0:00', '00:00'],
    [' 7:30 pm ', '19:30'],
    ['7.30PM', '19:30'],
    ['7 p.m.', '19:00'],
    ['12 am', '00:00'],
    ['12:15 pm', '12:15'],
  ])('%j is %s', (text, time) => expect(readTime(text)).toBe(time));

  it.each(['', '7', '24:00', '19:60', '13 pm', '0 am', 'evening', '19:30:00', '-1:30', '193', '7 m'])('%j is none', (text) =>
    expect(readTime(text)).toBeNull(),
  );

  it('is read again as it is written, every minute of the day', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1439 }), (minute) => {
        const time = `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
        expect(readTime(time)).toBe(time);
      }),
      { seed: 1, numRuns: 300 },
    );
  });
});
