import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chooseQuestions, shortages, type PaperCandidate } from '../../../src/core/papers/choose.js';
import { randomFrom, type Random } from '../../../src/core/random.js';

const none: ReadonlySet<number> = new Set();
const candidate = (questionId: number, objective: string, weight = 2): PaperCandidate => ({
  questionId,
  topic: objective.slice(0, 2),
  objective,
  weight,
});
/** Questions 1, 2, 3 and so on, of these objectives. */
const poolOf = (...objectives: string[]): PaperCandidate[] => objectives.map((objective, index) => candidate(index + 1, objective));

interface Drawn {
  pool: PaperCandidate[];
  shares: Record<string, number>;
  recent: Set<number>;
  seed: number;
}
const topics = ['AA', 'BB', 'CC'];
// ZZ has questions and no share. Weights go with objectives, as in a pack.
const row = fc.record({ topic: fc.constantFrom(...topics, 'ZZ'), number: fc.integer({ min: 1, max: 5 }), seen: fc.boolean() });
const asked = fc.integer({ min: 0, max: 12 });
const drawn: fc.Arbitrary<Drawn> = fc
  .record({ rows: fc.array(row, { maxLength: 60 }), shares: fc.record({ AA: asked, BB: asked, CC: asked }), seed: fc.integer() })
  .map(({ rows, shares, seed }) => ({
    pool: rows.map(({ topic, number }, index) => candidate(index + 1, `${topic}-0${number}`, 1 + (number % 3))),
    shares,
    recent: new Set(rows.flatMap(({ seen }, index) => (seen ? [index + 1] : []))),
    seed,
  }));
const choose = ({ pool, shares, recent, seed }: Drawn): number[] => chooseQuestions(pool, shares, recent, randomFrom(seed));

interface Part {
  asked: number;
  pool: PaperCandidate[];
  chosen: PaperCandidate[];
  isRecent: (each: PaperCandidate) => boolean;
}
/** What a paper has of each topic, beside what it asks and what there is. */
function partsOf(input: Drawn): Part[] {
  const chosen = choose(input).map((id) => input.pool.find(({ questionId }) => questionId === id) as PaperCandidate);
  return topics.map((topic) => ({
    asked: input.shares[topic] ?? 0,
    pool: input.pool.filter((each) => each.topic === topic),
    chosen: chosen.filter((each) => each.topic === topic),
    isRecent: ({ questionId }) => input.recent.has(questionId),
  }));
}
const objectivesOf = (list: readonly PaperCandidate[]): Set<string> => new Set(list.map(({ objective }) => objective));
const countOf = (list: readonly PaperCandidate[], objective: string): number => list.filter((each) => each.objective === objective).length;
const always = (property: (input: Drawn) => void): void => {
  fc.assert(fc.property(drawn, property), { seed: 20261126, numRuns: 1000 });
};

describe('any paper', () => {
  it('asks of each topic what its share says, or all there is where that is less, and nothing of other topics', () => {
    always((input) => {
      const parts = partsOf(input);
      for (const { asked: share, pool, chosen } of parts) expect(chosen).toHaveLength(Math.min(share, pool.length));
      expect(choose(input)).toHaveLength(parts.reduce((total, { chosen }) => total + chosen.length, 0));
    });
  });

  it('asks no question twice', () => {
    always((input) => {
      const chosen = choose(input);
      expect(new Set(chosen).size).toBe(chosen.length);
    });
  });

  it('asks two of one objective only where a topic asks more than it has objectives', () => {
    always((input) => {
      for (const { asked: share, pool, chosen } of partsOf(input)) {
        const objectives = objectivesOf(pool).size;
        expect(objectivesOf(chosen).size).toBe(Math.min(share, objectives));
      }
    });
  });

  it('asks a third of one objective only where every other has given two or has no more', () => {
    // Two objectives that could both go on are never more than one question apart.
    always((input) => {
      for (const { pool, chosen } of partsOf({ ...input, recent: new Set() })) {
        const counts = [...objectivesOf(pool)].map((objective) => ({ has: countOf(pool, objective), gave: countOf(chosen, objective) }));
        const most = Math.max(0, ...counts.map(({ gave }) => gave));
        for (const { has, gave } of counts) expect(gave).toBeGreaterThanOrEqual(Math.min(has, most - 1));
      }
    });
  });

  it('asks what was seen lately only for the objectives that have nothing else, while it asks one of each', () => {
    always((input) => {
      for (const { asked: share, pool, chosen, isRecent } of partsOf(input)) {
        if (share > objectivesOf(pool).size) continue;
        const withOthers = objectivesOf(pool.filter((each) => !isRecent(each))).size;
        expect(chosen.filter(isRecent)).toHaveLength(Math.max(0, share - withOthers));
      }
    });
  });

  it('never asks what was seen lately where its objective still has something else', () => {
    always((input) => {
      for (const { pool, chosen, isRecent } of partsOf(input)) {
        const left = objectivesOf(pool.filter((each) => !isRecent(each) && !chosen.includes(each)));
        expect(chosen.filter((each) => isRecent(each) && left.has(each.objective))).toEqual([]);
      }
    });
  });

  it('is the same for the same seed, and leaves the pool as it was', () => {
    always((input) => {
      const before = structuredClone(input);
      expect(choose(input)).toEqual(choose(input));
      expect(input).toEqual(before);
    });
  });

  it('goes topic by topic in the order of the shares', () => {
    always((input) => {
      const { AA, BB, CC } = input.shares as { AA: number; BB: number; CC: number };
      const order = choose({ ...input, shares: { CC, AA, BB } }).map((id) => input.pool[id - 1]?.topic);
      expect(order).toEqual([...order].sort((a, b) => ['CC', 'AA', 'BB'].indexOf(a ?? '') - ['CC', 'AA', 'BB'].indexOf(b ?? '')));
    });
  });
});

describe('what was seen lately', () => {
  it('stays away while the topic has others, however heavy its objective is', () => {
    const pool = [candidate(1, 'AA-01', 3), candidate(2, 'AA-02', 1)];
    for (let seed = 0; seed < 200; seed += 1) expect(chooseQuestions(pool, { AA: 1 }, new Set([1]), randomFrom(seed))).toEqual([2]);
  });

  it('is asked where the topic has no others left', () => {
    const chosen = chooseQuestions(poolOf('AA-01', 'AA-01', 'AA-02'), { AA: 3 }, new Set([1, 2, 3]), randomFrom(1));
    expect(chosen.sort()).toEqual([1, 2, 3]);
  });

  it('of another topic changes nothing', () => {
    const pool = poolOf('AA-01', 'AA-02', 'AA-03', 'BB-01');
    for (let seed = 0; seed < 50; seed += 1) {
      const paper = (recent: ReadonlySet<number>) => chooseQuestions(pool, { AA: 2 }, recent, randomFrom(seed));
      expect(paper(new Set([4, 99]))).toEqual(paper(none));
    }
  });

  it('waits in the second turn too, for the objective that still has something else, however heavy its own is', () => {
    // AA-01 has 1 and 2; AA-02, which weighs three times as much, has 3, and 4 which was seen lately.
    const pool = [candidate(1, 'AA-01', 1), candidate(2, 'AA-01', 1), candidate(3, 'AA-02', 3), candidate(4, 'AA-02', 3)];
    for (let seed = 0; seed < 50; seed += 1)
      expect(chooseQuestions(pool, { AA: 3 }, new Set([4]), randomFrom(seed)).sort()).toEqual([1, 2, 3]);
  });

  it('is not asked for the turn of its objective while another objective has questions not seen lately', () => {
    // AA-01 has 1, 2 and 3; AA-02 has 4, and 5 which was seen lately. Four are asked of two objectives, and four were not seen.
    const pool = poolOf('AA-01', 'AA-01', 'AA-01', 'AA-02', 'AA-02');
    for (let seed = 0; seed < 50; seed += 1)
      expect(chooseQuestions(pool, { AA: 4 }, new Set([5]), randomFrom(seed)).sort()).toEqual([1, 2, 3, 4]);
  });
});

/** In what part of 20,000 papers each question is. */
function frequencies(pool: readonly PaperCandidate[], count: number): number[] {
  const papers = 20_000;
  const random: Random = randomFrom('frequencies');
  const found = new Map<number, number>();
  for (let n = 0; n < papers; n += 1)
    for (const id of chooseQuestions(pool, { AA: count }, none, random)) found.set(id, (found.get(id) ?? 0) + 1);
  return pool.map(({ questionId }) => (found.get(questionId) ?? 0) / papers);
}
/** Chances that are further from what was worked out than four standard errors of a proportion: 4 × sqrt(0.25 / 20,000) = 0.0141. */
const amiss = (got: number[], expected: number[]): number[] =>
  got.filter((each, index) => !(Math.abs(each - (expected[index] ?? Number.NaN)) <= 0.0142));

// Worked by hand as drawing without replacement, each time in proportion to the weights left.
describe('the weights of objectives', () => {
  it('of 3 and 1 bring the heavier one three times out of four', () => {
    expect(amiss(frequencies([candidate(1, 'AA-01', 3), candidate(2, 'AA-02', 1)], 1), [3 / 4, 1 / 4])).toEqual([]);
  });

  it('of 3, 2 and 1, when one is chosen, count as 3, 2 and 1 of six', () => {
    const pool = [3, 2, 1].map((weight, i) => candidate(i + 1, `AA-0${i + 1}`, weight));
    expect(amiss(frequencies(pool, 1), [1 / 2, 1 / 3, 1 / 6])).toEqual([]);
  });

  it('of 3, 2 and 1, when two are chosen, count again for the second without the first', () => {
    // 3: 1/2 + 1/3 × 3/4 + 1/6 × 3/5 = 17/20. 2: 1/3 + 1/2 × 2/3 + 1/6 × 2/5 = 11/15. 1: 1/6 + 1/2 × 1/3 + 1/3 × 1/4 = 5/12.
    const pool = [3, 2, 1].map((weight, i) => candidate(i + 1, `AA-0${i + 1}`, weight));
    expect(amiss(frequencies(pool, 2), [17 / 20, 11 / 15, 5 / 12])).toEqual([]);
  });

  it('count, and not how many questions an objective has; within it each is as likely', () => {
    const pool = poolOf('AA-01', 'AA-02', 'AA-02', 'AA-02', 'AA-02', 'AA-02');
    expect(amiss(frequencies(pool, 1), [1 / 2, 1 / 10, 1 / 10, 1 / 10, 1 / 10, 1 / 10])).toEqual([]);
  });
});

describe('shortages', () => {
  it('name the topic, what is asked and what there is', () => {
    const pool = poolOf('AA-01', 'AA-01', 'BB-01');
    expect(shortages(pool, { AA: 3, BB: 1, CC: 2 })).toEqual([
      { topic: 'AA', asked: 3, have: 2 },
      { topic: 'CC', asked: 2, have: 0 },
    ]);
  });

  it('are none where there is just enough, or nothing is asked', () => {
    expect(shortages(poolOf('AA-01', 'AA-01'), { AA: 2, BB: 0 })).toEqual([]);
    expect(shortages([], {})).toEqual([]);
  });

  it('are there exactly when a paper comes out shorter than asked', () => {
    always((input) => {
      const wanted = Object.values(input.shares).reduce((total, share) => total + share, 0);
      const lacking = shortages(input.pool, input.shares).reduce((total, short) => total + short.asked - short.have, 0);
      expect(choose(input)).toHaveLength(wanted - lacking);
    });
  });
});

describe('a paper of nothing', () => {
  it('comes of an empty pool, of no shares and of shares of 0', () => {
    const pool = poolOf('AA-01', 'BB-01');
    expect(chooseQuestions([], { AA: 3 }, none, randomFrom(1))).toEqual([]);
    expect(chooseQuestions(pool, {}, none, randomFrom(1))).toEqual([]);
    expect(chooseQuestions(pool, { AA: 0, BB: 0 }, none, randomFrom(1))).toEqual([]);
  });

  it('in one topic leaves the others as they are', () => {
    expect(chooseQuestions(poolOf('AA-01', 'BB-01'), { AA: 0, CC: 2, BB: 1 }, none, randomFrom(1))).toEqual([2]);
  });
});
