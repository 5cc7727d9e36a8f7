import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beforeName, nightlyName, outOfRotation } from '../../src/core/backup-rotation.js';

/** All of two days, 7 daily, 4 weekly, 3 monthly, and those before the last 5 changes; none older than 100 days. Days are worked out by hand from a calendar of 2026. */

const at = (text: string): Date => new Date(`${text}:00Z`);
const staying = (names: string[]): string[] => {
  const gone = new Set(outOfRotation(names));
  return names.filter((name) => !gone.has(name)).sort();
};
const days = (from: string, count: number): string[] =>
  Array.from({ length: count }, (_, index) => nightlyName(new Date(at(`${from}T02:30`).getTime() + index * 86_400_000)));

describe('names of backups', () => {
  it('say their time in UTC, to the minute', () => {
    expect(nightlyName(new Date('2026-11-28T02:30:59+00:00'))).toBe('rungwise-2026-11-28-0230.backup');
    expect(nightlyName(new Date('2026-07-01T00:30:00+01:00'))).toBe('rungwise-2026-06-30-2330.backup');
    expect(beforeName('0010_trust', at('2026-11-28T14:05'))).toBe('before-0010_trust-2026-11-28-1405.backup');
  });
});

describe('the rotation', () => {
  it('keeps the last 7 days, the last days of 3 weeks before, and of 2 months before', () => {
    // 28 November 2026 is a Saturday; the Sundays before it are 22, 15 and 8 November; months end on 31 October and 30 September.
    const kept = ['28', '27', '26', '25', '24', '23', '22', '15', '08'].map((day) => `rungwise-2026-11-${day}-0230.backup`);
    kept.push('rungwise-2026-10-31-0230.backup', 'rungwise-2026-09-30-0230.backup');
    expect(staying(days('2026-08-01', 120))).toEqual(kept.sort());
  });

  it('counts days that have a backup, not days that have gone by', () => {
    const rare = ['2026-06-10', '2026-06-20', '2026-06-30', '2026-07-10', '2026-09-10'].map((day) => nightlyName(at(`${day}T02:30`)));
    expect(outOfRotation(rare)).toEqual([]);
  });

  it('keeps none that is more than 100 days older than the newest, of either kind', () => {
    // From 1 June to 9 September 2026 are 29 + 31 + 31 + 9 = 100 days.
    const newest = nightlyName(at('2026-09-09T02:30'));
    const [old, older] = [nightlyName(at('2026-06-01T02:30')), nightlyName(at('2026-05-31T02:30'))];
    const [before, long] = [beforeName('0009_classes', at('2026-06-01T02:30')), beforeName('0008_papers', at('2026-06-01T02:29'))];
    expect(outOfRotation([older, old, newest, long, before]).sort()).toEqual([long, older].sort());
    // Without a nightly one, whatever there is stays.
    expect(outOfRotation([long, beforeName('0010_trust', at('2026-11-28T10:00'))])).toEqual([]);
  });

  it('keeps the last of several of one day', () => {
    const day = ['0230', '0915', '2350'].map((time) => `rungwise-2026-11-28-${time}.backup`);
    const later = 'rungwise-2026-12-01-0000.backup';
    expect(staying([...day, later])).toEqual(['rungwise-2026-11-28-2350.backup', later]);
  });

  it('keeps all of the last two days, so that a backup after a mishap does not cost the one before it', () => {
    const names = [
      'rungwise-2026-11-27-0000.backup',
      'rungwise-2026-11-27-0001.backup',
      'rungwise-2026-11-28-1910.backup',
      'rungwise-2026-11-29-0000.backup',
    ];
    // To the minute 48 hours before the newest is over.
    expect(outOfRotation(names)).toEqual(['rungwise-2026-11-27-0000.backup']);
  });

  it('keeps the last before each of the last five changes, and each restore is a change', () => {
    const names = [
      beforeName('0007_outlook', at('2026-06-01T10:00')),
      beforeName('0008_papers', at('2026-06-02T10:00')),
      beforeName('0009_classes', at('2026-07-01T10:00')),
      beforeName('0010_trust', at('2026-07-28T10:00')),
      beforeName('0010_trust', at('2026-07-28T10:05')),
      beforeName('restore', at('2026-07-29T10:00')),
      beforeName('restore', at('2026-07-29T10:05')),
      beforeName('0011_later', at('2026-08-29T10:00')),
    ];
    // Five changes: before 0011, two restores, 0010 by its second, 0009.
    expect(outOfRotation(names).sort()).toEqual([names[0], names[1], names[3]].map((name) => name ?? '').sort());
  });

  const time = fc.date({ min: at('2025-01-01T00:00'), max: at('2028-12-31T23:59'), noInvalidDate: true });
  const toMinute = (one: Date): number => one.getTime() - (one.getTime() % 60_000);
  const stranger = fc.oneof(
    fc.string(),
    fc.constantFrom(
      'rungwise-2026-02-31-0230.backup',
      'rungwise-2026-01-01-2460.backup',
      'rungwise-2026-01-01-0230.backup.part',
      'Rungwise-2026-01-01-0230.backup',
      'rungwise-2026-01-01-0230.backup\n',
      'my-rungwise-2026-01-01-0230.backup',
      'before-2026-01-01-0230.backup',
      'before-X-2026-01-01-0230.backup',
      'removed-people.txt',
      '../rungwise-2026-01-01-0230.backup',
    ),
  );

  it('never removes the newest, nor a file that is not ours, and removes nothing more when done twice', () => {
    fc.assert(
      fc.property(
        fc.array(time, { maxLength: 150 }),
        fc.array(time, { maxLength: 8 }),
        fc.array(stranger, { maxLength: 8 }),
        (nights, changes, others) => {
          const nightly = [...new Set(nights.map(nightlyName))];
          const before = [...new Set(changes.map((one, index) => beforeName(`000${index}_x`, one)))];
          const names = [...others, ...nightly, ...before];
          const gone = outOfRotation(names);
          const left = names.filter((name) => !gone.includes(name));
          expect(gone.every((name) => nightly.includes(name) || before.includes(name))).toBe(true);
          if (nightly.length > 0) expect(left).toContain([...nightly].sort().at(-1));
          expect(outOfRotation(left)).toEqual([]);
          // All of the last two days stay; of what is older so many.
          const newest = Math.max(...[...nights, ...changes].map(toMinute));
          const aged = (names: string[], times: Date[], nameOf: (at: Date, index: number) => string): number =>
            new Set(
              times
                .map((one, index) => (toMinute(one) > newest - 2 * 86_400_000 ? '' : nameOf(one, index)))
                .filter((name) => names.includes(name)),
            ).size;
          expect(aged(left, nights, nightlyName)).toBeLessThanOrEqual(14);
          expect(aged(left, changes, (one, index) => beforeName(`000${index}_x`, one))).toBeLessThanOrEqual(5);
          if (nightly.length === 0)
            expect(left.filter((name) => before.includes(name)).length).toBeGreaterThanOrEqual(Math.min(5, before.length));
        },
      ),
    );
  });

  it('night after night, always leaves the last week whole, and something from each of the last four weeks and three months', () => {
    const nights = days('2026-01-01', 400);
    let names: string[] = [];
    for (const [index, name] of nights.entries()) {
      names = staying([...names, name]);
      expect(names).toEqual(expect.arrayContaining(nights.slice(Math.max(0, index - 6), index + 1)));
      // Ages in days of what is kept. The oldest is the last day of the month before last: a month's length ago on the 1st, two on the 31st.
      const ages = names.map((one) => index - nights.indexOf(one));
      if (index > 100) {
        expect(Math.max(...ages)).toBeGreaterThanOrEqual(28);
        expect(Math.max(...ages)).toBeLessThanOrEqual(62);
        for (const [least, most] of [
          [7, 14],
          [14, 21],
          [21, 62],
        ] as const)
          expect(
            ages.some((age) => age >= least && age <= most),
            `${index}`,
          ).toBe(true);
      }
    }
  });
});
