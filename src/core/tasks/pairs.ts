import type { Mark } from '../marking.js';
import type { QuestionOf } from '../questions/schema.js';
import { randomFrom, shuffled } from '../random.js';
import { letterOf, listWords, plainMark, type Entry, type PairsTask, type Reading } from './task.js';

/** Pairs to match. The score is the share matched right. */

export function showPairs(question: QuestionOf<'pairs'>, seed: number): PairsTask {
  const random = randomFrom(`options ${question.id} ${seed}`);
  const texts = [...new Set(question.pairs.map(({ right }) => right))];
  const rights = [...texts.map((text) => ({ text, why: '' })), ...(question.spare ?? [])].map((right, place) => ({ ...right, place }));
  const lefts = question.pairs.map(({ left, right, why }, place) => ({ place, text: left, right: texts.indexOf(right), why }));
  return { kind: 'pairs', lefts: shuffled(lefts, random), rights: shuffled(rights, random) };
}

/** The form sends, for each left one by its number in the pack, the number of a right one as shown; kept as numbers in the pack: `2,0,1`. */
export function readPairs(task: PairsTask, { parts }: Entry): Reading {
  const chosen = (place: number) => (/^\d$/.test(parts[place] ?? '') ? task.rights[Number(parts[place])] : undefined);
  const open = task.lefts.flatMap(({ place }, index) =>
    chosen(place) === undefined ? [{ letter: letterOf(index), at: `part-${place}` }] : [],
  );
  const missing = listWords(open.map(({ letter }) => letter));
  if (open[0] !== undefined) return { why: `Choose something for each. Still open: ${missing}.`, at: open[0].at };
  const given = task.lefts.map((_, place) => chosen(place)?.place ?? -1).join(',');
  return { given, mark: markPairs(task, given) };
}

/** The right one that was chosen for each left one, by the left one's number in the pack. */
export const pairsGiven = (given: string): number[] => given.split(',').map(Number);

export function markPairs(task: PairsTask, given: string): Mark {
  const chosen = pairsGiven(given);
  const right = task.lefts.filter((left) => chosen[left.place] === left.right).length;
  return plainMark(right === task.lefts.length, right / task.lefts.length);
}
