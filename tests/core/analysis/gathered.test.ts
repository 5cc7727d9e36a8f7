import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fisherInterval, pearson } from '../../../src/core/analysis/correlation.js';
import { chanceOf, correlationWithRest, pooled, type RestGroup } from '../../../src/core/analysis/first-sight.js';
import { earlier, gathered, nothing, type Tally, type Wording } from '../../../src/core/analysis/gathered.js';
import { partFigures } from '../../../src/core/analysis/parts.js';
import { showFixed } from '../../../src/core/tasks/index.js';
import { sampleOf } from '../../support/kind-samples.js';

/** A group of people, from their shares one by one. */
function group(...shares: number[]): RestGroup {
  const mean = shares.reduce((sum, share) => sum + share, 0) / shares.length;
  const variance = shares.reduce((sum, share) => sum + (share - mean) ** 2, 0) / shares.length;
  return { people: shares.length, mean, variance, least: Math.min(...shares), most: Math.max(...shares) };
}

/** Of these people against those. */
const correlation = (inside: RestGroup[], outside: RestGroup[]): number | null =>
  correlationWithRest(pooled(inside), pooled([...inside, ...outside]));

function tally(choice: string | null, answers: number, more: Partial<Tally> = {}): Tally {
  return {
    first: true,
    revision: 1,
    choice,
    certainty: 'fairly',
    right: choice === '0',
    answers,
    rest: null,
    upper: 0,
    lower: 0,
    both: 0,
    ...more,
  };
}

const wording: Wording = { revision: 1, values: ['0', '1', '2'], names: ['A fuse', 'A switch', 'A plug'], key: '0' };

describe('the correlation with the rest', () => {
  // Shares right of the rest, in tenths: 8, 6, 7 for three who were right and 4, 5 for two who were not. By hand, with x = 1 1 1 0 0:
  // n = 5, Σx = 3, Σy = 30, Σxy = 8 + 6 + 7 = 21, Σy² = 64 + 36 + 49 + 16 + 25 = 190;
  // r = (5·21 - 3·30) / √((5·3 - 3²)(5·190 - 30²)) = 15 / √(6·50) = 15 / √300 = √3 / 2.
  it('is that of the people one by one, however they are grouped', () => {
    const hand = Math.sqrt(3) / 2;
    expect(correlation([group(0.8, 0.6, 0.7)], [group(0.4, 0.5)])).toBeCloseTo(hand, 12);
    expect(correlation([group(0.8, 0.6), group(0.7)], [group(0.4), group(0.5)])).toBeCloseTo(hand, 12);
  });

  it('is minus one where one person stands against one, and does worse', () => {
    expect(correlation([group(0.2)], [group(0.9)])).toBe(-1);
  });

  it.each([
    ['nobody chose it', [], [group(0.1, 0.9)]],
    ['everybody chose it', [group(0.1, 0.9)], []],
    // 0.7 three times sums to a little less than 2.1 in a computer.
    ['all do alike with the rest', [group(0.7, 0.7, 0.7)], [group(0.7)]],
    ['there is nobody', [], []],
  ])('is not told where %s', (_when, inside, outside) => {
    expect(correlation(inside, outside)).toBeNull();
  });

  it('agrees with the correlation of the whole list, for any people in any groups', () => {
    const person = fc.record({ rest: fc.integer({ min: 0, max: 40 }), right: fc.boolean(), heap: fc.integer({ min: 0, max: 3 }) });
    fc.assert(
      fc.property(fc.array(person, { minLength: 2, maxLength: 60 }), (people) => {
        const heaps = (right: boolean): RestGroup[] =>
          [0, 1, 2, 3].flatMap((heap) => {
            const shares = people.filter((one) => one.right === right && one.heap === heap).map(({ rest }) => rest / 40);
            return shares.length === 0 ? [] : [group(...shares)];
          });
        const whole = pearson(
          people.map(({ right }) => (right ? 1 : 0)),
          people.map(({ rest }) => rest / 40),
        );
        const grouped = correlation(heaps(true), heaps(false));
        if (whole === null) expect(grouped).toBeNull();
        else expect(grouped).toBeCloseTo(whole, 9);
      }),
    );
  });
});

describe('the figures of one question', () => {
  const tallies: Tally[] = [
    tally('0', 2, { certainty: 'sure', rest: group(0.8, 0.6), upper: 1 }),
    tally('0', 2, { rest: group(0.7), upper: 1 }),
    tally('1', 1, { certainty: 'sure', rest: group(0.4), lower: 1 }),
    tally('2', 1, { certainty: 'guessing', rest: group(0.5), lower: 1 }),
    tally(nothing, 1, { certainty: 'guessing' }),
    tally(null, 6, { first: false, certainty: null, right: true }),
    tally(null, 2, { first: false, certainty: null, right: false }),
  ];
  const figures = gathered(tallies, [wording], 1);

  it('count people by their first answers, and later answers apart', () => {
    expect(figures).toMatchObject({ n: 7, right: 4, held: 5, later: { right: 6, of: 8 } });
  });

  it('hold right against the rest among those who have one, with limits by how many they are', () => {
    expect(figures.itemRest).toBeCloseTo(Math.sqrt(3) / 2, 12);
    expect(figures.itemRestInterval).toEqual(fisherInterval(figures.itemRest, 5));
  });

  it('do the same for each option: the one that the weakest chose goes against the rest', () => {
    // For option 1, x = 0 0 0 1 0: Σxy = 4, r = (5·4 - 1·30) / √((5 - 1)·50) = -10 / √200 = -1/√2.
    const option = figures.choices.find(({ value }) => value === '1');
    expect(option?.rest).toBeCloseTo(-Math.SQRT1_2, 12);
    expect(option).toMatchObject({ people: 1, key: false, lower: 1, upper: 0, certainty: { sure: 1, fairly: 0, guessing: 0, unsaid: 0 } });
    expect(figures.choices.map(({ value, people, key }) => [value, people, key])).toEqual([
      ['0', 4, true],
      ['1', 1, false],
      ['2', 1, false],
      [nothing, 1, false],
    ]);
  });

  it('count an option that nobody chose, and do not count not knowing as right', () => {
    const none = gathered([tally(nothing, 3)], [wording], 1);
    expect(none.choices.map(({ value, people }) => [value, people])).toEqual([
      ['0', 0],
      ['1', 0],
      ['2', 0],
      [nothing, 3],
    ]);
    expect([none.n, none.right]).toEqual([3, 0]);
  });

  it('tell how many were right by how sure they were', () => {
    expect(figures.certainty).toEqual({
      sure: { right: 2, of: 3 },
      fairly: { right: 2, of: 2 },
      guessing: { right: 0, of: 2 },
      unsaid: { right: 0, of: 0 },
    });
  });

  it('compare the upper with the lower group, unless they share somebody', () => {
    expect(figures.groups).toEqual({ upper: { right: 2, of: 2 }, lower: { right: 0, of: 2 } });
    expect(gathered([tally('0', 2, { rest: group(0.5, 0.5), upper: 2, lower: 2, both: 2 })], [wording], 1).groups).toBeNull();
  });

  it('have the limits that the table of guidelines prints: 12 of 20 lie between 39 and 78 %', () => {
    const { facility } = gathered([tally('0', 12), tally('1', 8)], [wording], 1);
    expect([facility?.low.toFixed(2), facility?.high.toFixed(2)]).toEqual(['0.39', '0.78']);
  });

  it('are empty for nobody', () => {
    expect(gathered([], [wording], 1)).toMatchObject({
      n: 0,
      right: 0,
      facility: null,
      held: 0,
      itemRest: null,
      groups: null,
      choices: [],
    });
  });
});

describe('answers to an earlier revision that asked the same', () => {
  const now: Wording = { revision: 2, values: ['0', '1', '2'], names: ['A plug', 'A fuse', 'A breaker'], key: '1' };

  it('are said in the present wording, whose options stand in another order', () => {
    const figures = gathered([tally('0', 3), tally('2', 1), tally('1', 2, { revision: 2, right: true })], [wording, now], 2);
    expect(figures.choices.map(({ value, people }) => [value, people])).toEqual([
      ['0', 1],
      ['1', 5],
      ['2', 0],
    ]);
    expect(figures.right).toBe(5);
  });

  it('keep as an earlier choice what is offered no more, and stay as they were marked', () => {
    const figures = gathered([tally('1', 4)], [wording, now], 2);
    expect(figures.choices.find(({ value }) => value === earlier)?.people).toBe(4);
    expect([figures.n, figures.right]).toEqual([4, 0]);
  });

  it('are right by the corrected key', () => {
    const corrected = { ...now, key: '0' };
    const figures = gathered([tally('0', 3), tally('2', 2)], [wording, corrected], 2);
    expect([figures.n, figures.right]).toEqual([5, 2]);
  });
});

describe('the chance of being right by luck', () => {
  it.each([
    ['single', 4, 1 / 4],
    ['place', 5, 1 / 5],
    ['several', 4, 1 / 16],
    ['order', 4, 1 / 24],
    ['pairs', 3, 1 / 27],
    ['numeric', 0, 0],
    ['numeric', 6, 1 / 6],
  ])('of kind %s with %i parts is what counting the ways gives', (kind, parts, chance) => {
    expect(chanceOf(kind, parts)).toBeCloseTo(chance, 12);
  });
});

describe('an answer with parts', () => {
  const parts = (kind: 'several' | 'order' | 'pairs' | 'single', given: [string, number][]) =>
    partFigures(
      showFixed(sampleOf(kind), 7, null),
      given.map(([text, answers]) => ({ given: text, answers })),
    )
      .sort((a, b) => a.place - b.place)
      .map(({ right, of }) => [right, of]);

  it('counts each statement by itself: true, false, true, false is right', () => {
    expect(
      parts('several', [
        ['tftf', 3],
        ['ttff', 2],
      ]),
    ).toEqual([
      [5, 5],
      [3, 5],
      [3, 5],
      [5, 5],
    ]);
  });

  it('takes steps that may change places as right in either order', () => {
    expect(
      parts('order', [
        ['0,2,1,3', 2],
        ['3,1,2,0', 1],
      ]),
    ).toEqual([
      [2, 3],
      [3, 3],
      [3, 3],
      [2, 3],
    ]);
  });

  it('counts each pair: volt, ampere, volt is right', () => {
    expect(
      parts('pairs', [
        ['0,1,0', 4],
        ['0,2,1', 1],
      ]),
    ).toEqual([
      [5, 5],
      [4, 5],
      [4, 5],
    ]);
  });

  it('has none where one choice answers', () => {
    expect(parts('single', [['0', 3]])).toEqual([]);
  });
});
