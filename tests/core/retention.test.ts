import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decide, isOverdue, keepChoices, lateDays, monthsBefore, noticeDays, type KeptPerson } from '../../src/core/retention.js';

/** How long people are kept. Day numbers by the calendar: 2026-11-26 is day 20783 (56 years of 365 days, 14 leap days, 329 days of 2026). */

const day = (iso: string): number => Date.parse(iso) / 86_400_000;
const person = (more: Partial<KeptPerson> = {}): KeptPerson => ({
  id: 1,
  visited: day('2025-05-25'),
  keepUntil: null,
  examDay: null,
  sitting: false,
  notice: null,
  ...more,
});
const today = day('2026-11-26');

describe('months before a day', () => {
  it.each([
    ['2026-11-26', 18, '2025-05-26'],
    ['2026-08-31', 6, '2026-02-28'],
    ['2028-08-31', 6, '2028-02-29'],
    ['2026-01-15', 24, '2024-01-15'],
    ['2026-03-31', 36, '2023-03-31'],
  ])('%s less %i months is %s', (iso, months, before) => {
    expect(monthsBefore(day(iso), months)).toBe(day(before));
  });
});

describe('a candidate', () => {
  it('who was here on the very day is kept, and on the day before is overdue', () => {
    expect(isOverdue(person({ visited: day('2025-05-26') }), today, 18)).toBe(false);
    expect(isOverdue(person({ visited: day('2025-05-25') }), today, 18)).toBe(true);
  });

  it.each([
    ['asked to be kept until today', { keepUntil: today }],
    ['asked to be kept until next year', { keepUntil: today + 365 }],
    ['has a paper open', { sitting: true }],
    ['has the exam today', { examDay: today }],
    ['has the exam ahead', { examDay: today + 90 }],
  ])('who %s is never overdue, and loses a notice', (_what, more) => {
    expect(decide(person(more), today, 18)).toBe('nothing');
    expect(decide(person({ ...more, notice: { given: today - 14, removeOn: today } }), today, 18)).toBe('forget-notice');
  });

  it.each([
    ['a time that is over', { keepUntil: today - 1 }],
    ['an exam that is over', { examDay: today - 1 }],
  ])('with %s is told first', (_what, more) => {
    expect(decide(person(more), today, 18)).toBe('notice');
  });

  it('is removed on the day that was said, not the day before, and told anew when the server was off too long after it', () => {
    const noticed = (given: number): KeptPerson => person({ notice: { given, removeOn: given + noticeDays } });
    expect(decide(noticed(today - 13), today, 18)).toBe('nothing');
    expect(decide(noticed(today - 14), today, 18)).toBe('remove');
    expect(decide(noticed(today - 14 - lateDays), today, 18)).toBe('remove');
    expect(decide(noticed(today - 15 - lateDays), today, 18)).toBe('notice');
  });
});

describe('two years of nights', () => {
  /** What happens in the life of somebody, by day from the start: visits, and days on which the server was off or the club changed its mind. */
  const lives = fc.record({
    visits: fc.uniqueArray(fc.integer({ min: 0, max: 730 }), { maxLength: 6 }),
    off: fc.array(fc.record({ from: fc.integer({ min: 0, max: 730 }), days: fc.integer({ min: 1, max: 90 }) }), { maxLength: 4 }),
    months: fc.array(fc.record({ from: fc.integer({ min: 0, max: 730 }), months: fc.constantFrom(...keepChoices) }), {
      minLength: 1,
      maxLength: 4,
    }),
    keep: fc.option(fc.integer({ min: 0, max: 1000 })),
    exam: fc.option(fc.integer({ min: 0, max: 1000 })),
  });

  it('remove nobody without fourteen days’ notice, nobody who came back after it, and nobody whom something keeps', () => {
    const start = day('2024-01-31');
    let removed = 0;
    fc.assert(
      fc.property(lives, ({ visits, off, months, keep, exam }) => {
        let [visited, noticed] = [start, null as KeptPerson['notice']];
        for (let at = start; at <= start + 760; at += 1) {
          if (visits.includes(at - start)) visited = at;
          if (off.some(({ from, days }) => at >= start + from && at < start + from + days)) continue;
          const set = months.filter(({ from }) => start + from <= at).at(-1)?.months ?? 18;
          const now: KeptPerson = {
            id: 1,
            visited,
            keepUntil: keep === null ? null : start + keep,
            examDay: exam === null ? null : start + exam,
            sitting: false,
            notice: noticed,
          };
          const decision = decide(now, at, set);
          if (decision === 'notice') noticed = { given: at, removeOn: at + noticeDays };
          if (decision === 'forget-notice') noticed = null;
          if (decision !== 'remove') continue;
          removed += 1;
          expect(noticed).not.toBeNull();
          expect(at - (noticed?.given ?? at)).toBeGreaterThanOrEqual(14);
          // Whoever was here since the notice, or within the months that are set, is here still.
          expect(visited).toBeLessThan(noticed?.given ?? 0);
          expect(visited).toBeLessThan(monthsBefore(at, set));
          expect([keep === null || start + keep < at, exam === null || start + exam < at]).toEqual([true, true]);
          return;
        }
      }),
      { seed: 20261126, numRuns: 400 },
    );
    expect(removed).toBeGreaterThan(50);
  });

  it('remove somebody who never comes on the fifteenth night after the time is over', () => {
    const visited = day('2024-01-31');
    let notice: KeptPerson['notice'] = null;
    for (let at = visited; ; at += 1) {
      const decision = decide(person({ visited, notice }), at, 18);
      if (decision === 'notice') notice = { given: at, removeOn: at + noticeDays };
      if (decision !== 'remove') continue;
      // 31 January 2024 and 18 months are 31 July 2025; the day after it is the first on which it is longer ago.
      expect(at).toBe(day('2025-08-01') + 14);
      break;
    }
  });
});
