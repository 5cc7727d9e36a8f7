import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayNumber, isoDay } from '../../src/core/calendar.js';
import { readReason, readSignOff } from '../../src/core/sign-off.js';

/** 2026-11-26 is day 20783: 56 years of 365 days, 14 leap days (1972 to 2024), and 329 days to 26 November. 56 × 365 + 14 + 329. */
const today = 20783;
const all = { ticked: [0, 1, 2], seenOn: '2026-11-26', remarks: '' };
const whys = (reading: ReturnType<typeof readSignOff>) => (reading.ok ? [] : reading.faults.map(({ field }) => field));

describe('signing a skill', () => {
  it('is done when all was seen, on a day that has been', () => {
    expect(dayNumber(Date.parse('2026-11-26T12:00:00Z'), 'UTC')).toBe(today);
    expect(readSignOff(all, 3, today)).toEqual({ ok: true, seenDay: today, remarks: '' });
    expect(readSignOff({ ...all, seenOn: '19 Nov 2026', remarks: ' Slow,\r\nand careful ' }, 3, today)).toEqual({
      ok: true,
      seenDay: today - 7,
      remarks: 'Slow,\nand careful',
    });
  });

  it('is refused while anything is not ticked, and says how much', () => {
    const one = readSignOff({ ...all, ticked: [2, 0] }, 3, today);
    expect(one).toMatchObject({ ok: false, missing: [1], faults: [{ field: 'criteria' }] });
    expect(one.ok ? '' : one.faults[0]?.why).toMatch(/^One criterion is not ticked\./);
    const none = readSignOff({ ...all, ticked: [] }, 3, today);
    expect(none.ok ? '' : none.faults[0]?.why).toMatch(/^3 criteria are not ticked\./);
  });

  it('is not helped by a tick for what the skill does not have', () => {
    expect(readSignOff({ ...all, ticked: [0, 1, 5, 6, 7] }, 3, today)).toMatchObject({ ok: false, missing: [2] });
  });

  it.each([
    ['2026-11-27', false],
    ['2026-11-26', true],
    // A year and a day back: 366 days, since no leap day lies between.
    ['2025-11-25', true],
    ['2025-11-24', false],
    ['2026-02-29', false],
    ['', false],
    ['yesterday', false],
  ])('takes %s for the day it was seen: %s', (seenOn, taken) => {
    expect(whys(readSignOff({ ...all, seenOn }, 3, today))).toEqual(taken ? [] : ['seenOn']);
  });

  it('takes 300 letters of remarks and no more, counted as people count them', () => {
    expect(whys(readSignOff({ ...all, remarks: '🪜'.repeat(300) }, 3, today))).toEqual([]);
    expect(whys(readSignOff({ ...all, remarks: 'x'.repeat(301) }, 3, today))).toEqual(['remarks']);
    // Browsers send a new line as two signs.
    expect(whys(readSignOff({ ...all, remarks: `${'x\r\n'.repeat(149)}xx` }, 3, today))).toEqual([]);
  });

  it('tells everything that is wrong at once', () => {
    expect(whys(readSignOff({ ticked: [], seenOn: '2027-01-01', remarks: 'x'.repeat(400) }, 3, today))).toEqual([
      'criteria',
      'seenOn',
      'remarks',
    ]);
  });

  it('holds for every set of ticks: signed exactly when every place is among them', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 8 }), fc.uniqueArray(fc.integer({ min: 0, max: 7 })), (count, ticked) => {
        const reading = readSignOff({ ...all, ticked }, count, today);
        const missing = [...Array(count).keys()].filter((at) => !ticked.includes(at));
        expect(reading.ok).toBe(missing.length === 0);
        if (!reading.ok) expect(reading.missing).toEqual(missing);
      }),
    );
  });

  it('holds for every day: from 366 days ago to today, and no other', () => {
    fc.assert(
      fc.property(fc.integer({ min: -2000, max: 2000 }), (gap) => {
        expect(readSignOff({ ...all, seenOn: isoDay(today + gap) }, 3, today).ok).toBe(gap <= 0 && gap >= -366);
      }),
    );
  });
});

describe('withdrawing a signature', () => {
  it('needs a reason that says something', () => {
    expect(readReason(' Signed for Tansy by mistake. ')).toEqual({ ok: true, reason: 'Signed for Tansy by mistake.' });
    for (const reason of ['', '  ', '\n', '\u0000']) expect(readReason(reason).ok).toBe(false);
    expect(readReason('x'.repeat(301)).ok).toBe(false);
  });
});
