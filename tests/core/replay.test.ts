import { describe, expect, it } from 'vitest';
import { memoryModel, type Memory, type Rating } from '../../src/core/memory.js';
import { replay, type LoggedAnswer } from '../../src/core/replay.js';

const model = memoryModel();

/** A log as the answers would have written it. */
function logOf(steps: readonly [day: number, rating: Rating | null][], revision = 1, from: Memory | null = null): LoggedAnswer[] {
  let memory = from;
  return steps.map(([day, rating]) => {
    const before = memory;
    if (rating !== null) memory = model.after(memory, day, rating);
    return { revision, day, rating, before, after: memory };
  });
}

describe('a replay', () => {
  const log = logOf([
    [100, 3],
    [100, null],
    [103, 1],
    [104, 2],
  ]);
  const end = log.at(-1)?.after ?? null;

  it('ends with the memory that is kept', () => {
    expect(replay(log, { memory: end, revision: 1 }, model)).toEqual({ memory: end, differences: [] });
  });

  it('tells a missing answer, a changed one and a changed memory', () => {
    expect(replay(log.slice(1), { memory: end, revision: 1 }, model).differences[0]).toMatch(
      /^answer 1 began from stability .* nothing was there$/,
    );
    const changed = log.map((answer, index) => (index === 2 ? { ...answer, rating: 3 as const } : answer));
    expect(replay(changed, { memory: end, revision: 1 }, model).differences[0]).toMatch(/^answer 3 left /);
    expect(replay(log, { memory: null, revision: 1 }, model).differences).toEqual([expect.stringMatching(/^nothing is kept/)]);
  });

  it('takes a fresh start for what it is when the question became another one, and not otherwise', () => {
    const after = logOf([[110, 3]], 2);
    const last = after[0]?.after ?? null;
    expect(replay([...log, ...after], { memory: last, revision: 2 }, model).differences).toEqual([]);
    expect(replay([...log, ...logOf([[110, 3]], 1)], { memory: last, revision: 1 }, model).differences).toHaveLength(1);
    expect(replay(log, { memory: null, revision: 2 }, model).differences).toEqual([]);
  });
});
