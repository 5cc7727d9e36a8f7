import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rankObjectives, type MemberLoss } from '../../../src/core/classes/teach.js';

const loss = (objective: string, lost: number, met: number): MemberLoss => ({ objective, lost, met });

describe('objectives by the marks that a class loses', () => {
  it('stand with mean, least and most, the dearest first', () => {
    const { known } = rankObjectives([
      [loss('LA-01', 0.2, 5), loss('EA-03', 0.9, 4)],
      [loss('LA-01', 0.4, 3), loss('EA-03', 0.3, 4)],
      [loss('LA-01', 0.6, 4), loss('EA-03', 0.6, 4)],
    ]);
    // By hand: (0.9 + 0.3 + 0.6) / 3 = 0.6 and (0.2 + 0.4 + 0.6) / 3 = 0.4.
    expect(known.map(({ objective }) => objective)).toEqual(['EA-03', 'LA-01']);
    expect(known[0]).toEqual({ objective: 'EA-03', mean: expect.closeTo(0.6, 12), least: 0.3, most: 0.9, met: 12, people: 3 });
    expect(known[1]).toEqual({ objective: 'LA-01', mean: expect.closeTo(0.4, 12), least: 0.2, most: 0.6, met: 12, people: 3 });
  });

  it.each([
    ['nine questions by three', [3, 3, 3], false],
    ['ten questions by three', [4, 3, 3], true],
    ['forty questions by two of three', [20, 20, 0], false],
  ])('are told of or not: %s', (_name, met, told) => {
    const { known, unsure } = rankObjectives(met.map((count) => [loss('LA-01', 0.5, count)]));
    expect([known.length, unsure.length]).toEqual(told ? [1, 0] : [0, 1]);
  });

  it('of a class of one or two are told of when all of it answered enough', () => {
    expect(rankObjectives([[loss('LA-01', 0.5, 10)]]).known).toHaveLength(1);
    expect(rankObjectives([[loss('LA-01', 0.5, 9)], [loss('LA-01', 0.5, 1)]]).known).toHaveLength(1);
    expect(rankObjectives([[loss('LA-01', 0.5, 30)], [loss('LA-01', 0.5, 0)]]).known).toHaveLength(0);
  });

  it('of an empty class are none', () => {
    expect(rankObjectives([])).toEqual({ known: [], unsure: [] });
  });

  it('do not hang on the order of the members', () => {
    const member = fc.array(
      fc.record({
        objective: fc.constantFrom('LA-01', 'EA-03', 'FU-02'),
        lost: fc.double({ min: 0, max: 2, noNaN: true }),
        met: fc.nat(20),
      }),
      {
        maxLength: 3,
      },
    );
    fc.assert(
      fc.property(fc.array(member, { maxLength: 8 }), (members) => {
        const names = (list: { objective: string }[]): string[] => list.map(({ objective }) => objective).sort();
        const [a, b] = [rankObjectives(members), rankObjectives([...members].reverse())];
        expect(names(a.known)).toEqual(names(b.known));
        for (const one of [...a.known, ...a.unsure]) {
          expect(one.least).toBeLessThanOrEqual(one.mean + 1e-9);
          expect(one.most).toBeGreaterThanOrEqual(one.mean - 1e-9);
        }
      }),
    );
  });
});
