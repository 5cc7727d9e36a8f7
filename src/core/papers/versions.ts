import { shuffled, type Random } from '../random.js';

/** The versions of a paper: the same questions, each time in another order, with other numbers and other letters. */

export interface VersionItem {
  questionId: number;
  seed: number;
}

/**
 * @param questions in the order of the syllabus, which the first version keeps
 * @param seedOf a seed for a question that can be put on a sheet
 */
export function versionItems(
  questions: readonly number[],
  version: number,
  random: Random,
  seedOf: (questionId: number, random: Random) => number,
): VersionItem[] {
  const order = version === 1 ? questions : shuffled(questions, random);
  return order.map((questionId) => ({ questionId, seed: seedOf(questionId, random) }));
}
