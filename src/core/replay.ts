import type { Memory, MemoryModel, Rating } from './memory.js';

/** Memories rebuilt from the record of answers, to see that what is kept is what the answers make. */

export interface LoggedAnswer {
  revision: number;
  day: number;
  /** Null when the answer did not move the memory. */
  rating: Rating | null;
  before: Memory | null;
  after: Memory | null;
}

export interface Replayed {
  memory: Memory | null;
  /** What does not agree, in the order of the answers. */
  differences: string[];
}

/** Both are written as double precision, so anything but rounding is a difference. */
const tolerance = 1e-9;

/**
 * @param answers of one person to one question, in their order
 * @param kept the memory as it stands, and the revision that is asked now
 */
export function replay(answers: readonly LoggedAnswer[], kept: { memory: Memory | null; revision: number }, model: MemoryModel): Replayed {
  const differences: string[] = [];
  let memory: Memory | null = null;
  let revision = 0;
  answers.forEach((answer, index) => {
    // A question that became another one starts afresh.
    if (answer.before === null && memory !== null && answer.revision > revision) memory = null;
    if (!same(memory, answer.before))
      differences.push(`answer ${index + 1} began from ${words(answer.before)}, and ${words(memory)} was there`);
    const from: Memory | null = answer.before;
    memory = answer.rating === null ? from : model.after(from, answer.day, answer.rating);
    if (!same(memory, answer.after)) differences.push(`answer ${index + 1} left ${words(answer.after)}, and makes ${words(memory)}`);
    revision = answer.revision;
  });
  if (kept.memory === null && memory !== null && kept.revision > revision) memory = null;
  if (!same(memory, kept.memory)) differences.push(`${words(kept.memory)} is kept, and the answers make ${words(memory)}`);
  return { memory, differences };
}

function same(a: Memory | null, b: Memory | null): boolean {
  if (a === null || b === null) return a === b;
  return a.lastDay === b.lastDay && near(a.stability, b.stability) && near(a.difficulty, b.difficulty);
}

const near = (a: number, b: number): boolean => Math.abs(a - b) <= tolerance * Math.max(1, Math.abs(a), Math.abs(b));

const words = (memory: Memory | null): string =>
  memory === null ? 'nothing' : `stability ${memory.stability}, difficulty ${memory.difficulty} on day ${memory.lastDay}`;
