import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { localText, readLocal } from '../../src/core/local-time.js';

/** Moments as a wall clock shows them. Offsets and changes of the clocks by the IANA time zone database. */

const at = (iso: string): number => Date.parse(iso);

describe('a moment on the wall', () => {
  it.each([
    ['2026-11-26T19:30:00Z', 'Europe/London', '2026-11-26T19:30'], // winter: UTC
    ['2026-07-01T18:30:00Z', 'Europe/London', '2026-07-01T19:30'], // summer: an hour ahead
    ['2026-11-27T00:30:00Z', 'America/New_York', '2026-11-26T19:30'], // five hours behind
    ['2026-11-26T13:45:00Z', 'Asia/Kathmandu', '2026-11-26T19:30'], // 5 h 45 min ahead
  ])('%s is in %s %s, and is read back', (iso, zone, text) => {
    expect(localText(at(iso), zone)).toBe(text);
    expect(readLocal(text, zone)).toBe(at(iso));
  });

  it('that is skipped as clocks go forward is none: in London 01:30 on 29 March 2026', () => {
    expect(readLocal('2026-03-29T01:30', 'Europe/London')).toBeNull();
    expect(readLocal('2026-03-29T02:00', 'Europe/London')).toBe(at('2026-03-29T01:00:00Z'));
  });

  it('that comes twice as clocks go back is the first: in London 01:30 on 25 October 2026', () => {
    expect(readLocal('2026-10-25T01:30', 'Europe/London')).toBe(at('2026-10-25T00:30:00Z'));
  });

  it.each(['', 'tonight', '2026-11-26', '19:30', '2026-13-01T19:30', '2026-02-30T19:30', '2026-11-26T25:00', '26.11.2026 19:30'])(
    '%j is none',
    (text) => {
      expect(readLocal(text, 'Europe/London')).toBeNull();
    },
  );

  it('is read back as the same moment, wherever and whenever, or as the one an hour before that has the same name', () => {
    const zones = [
      'Europe/London',
      'America/New_York',
      'Australia/Lord_Howe',
      'Asia/Kathmandu',
      'Pacific/Kiritimati',
      'Pacific/Pago_Pago',
      'UTC',
    ];
    fc.assert(
      fc.property(
        fc.integer({ min: at('2020-01-01T00:00Z') / 60_000, max: at('2040-01-01T00:00Z') / 60_000 }),
        fc.constantFrom(...zones),
        (minutes, zone) => {
          const moment = minutes * 60_000;
          const back = readLocal(localText(moment, zone), zone) ?? 0;
          expect(back === moment || (moment - back <= 3_600_000 && localText(back, zone) === localText(moment, zone))).toBe(true);
        },
      ),
      { seed: 7, numRuns: 1000 },
    );
  });
});
