import type { Mark } from '../marking.js';
import type { QuestionOf } from '../questions/schema.js';
import { randomFrom, shuffled } from '../random.js';
import { letterOf, listWords, plainMark, type Entry, type OrderTask, type Reading, type ShownStep } from './task.js';

/** Steps to put in order. The score is the share of pairs that stand the right way round, as in Kendall's rank correlation. */

export function showOrder(question: QuestionOf<'order'>, seed: number): OrderTask {
  let rank = -1;
  const steps = question.steps.map(({ text, why, tied }, place): ShownStep => {
    if (tied !== true) rank += 1;
    return { place, rank, text, why };
  });
  const random = randomFrom(`options ${question.id} ${seed}`);
  let shown = shuffled(steps, random);
  // Two steps at least differ in rank, so some order is wrong: the reverse one is, whatever chance says.
  for (let tried = 0; scoreOf(shown) === 1; tried += 1) shown = tried < 8 ? shuffled(steps, random) : [...steps].reverse();
  return { kind: 'order', steps: shown };
}

/** The form sends a place, from 1, for each step as shown; kept as the steps' numbers in the pack, first to last: `2,0,1`. */
export function readOrder(task: OrderTask, { parts }: Entry): Reading {
  const count = task.steps.length;
  const places = task.steps.map((_, index) => Number(parts[index] ?? ''));
  const open = places.flatMap((place, index) => (place >= 1 && place <= count && Number.isInteger(place) ? [] : [letterOf(index)]));
  if (open.length === count) return { why: 'Put the steps in order first. None of them has been moved yet.', at: 'options' };
  if (open.length > 0) return { why: `Give every step its place, 1 to ${count}. Still without one: ${listWords(open)}.`, at: 'options' };
  for (let place = 1; place <= count; place += 1) {
    const sharing = places.flatMap((other, index) => (other === place ? [letterOf(index)] : []));
    if (sharing.length > 1)
      return { why: `Steps ${listWords(sharing)} have the same place, ${place}. Give each place once.`, at: 'options' };
  }
  const inOrder = task.steps.map((step, index) => ({ step, at: places[index] ?? 0 })).sort((a, b) => a.at - b.at);
  const given = inOrder.map(({ step }) => step.place).join(',');
  return { given, mark: markOrder(task, given) };
}

/** The steps as they were put; a number that is none of theirs is left out. */
export function orderGiven(task: OrderTask, given: string): ShownStep[] {
  return given.split(',').flatMap((place) => task.steps.filter((step) => String(step.place) === place));
}

export function markOrder(task: OrderTask, given: string): Mark {
  const put = orderGiven(task, given);
  const score = put.length === task.steps.length ? scoreOf(put) : 0;
  return plainMark(score === 1, score);
}

function scoreOf(put: readonly ShownStep[]): number {
  let right = 0;
  let pairs = 0;
  put.forEach((later, index) =>
    put.slice(0, index).forEach((sooner) => {
      if (sooner.rank === later.rank) return;
      pairs += 1;
      if (sooner.rank < later.rank) right += 1;
    }),
  );
  return pairs === 0 ? 1 : right / pairs;
}
