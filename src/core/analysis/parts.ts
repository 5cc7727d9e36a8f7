import { orderGiven } from '../tasks/order.js';
import { pairsGiven } from '../tasks/pairs.js';
import type { Task } from '../tasks/task.js';

/** Of an answer with parts: how many had each part right. */

export interface PartFigures {
  /** The part's place in the pack. */
  place: number;
  right: number;
  of: number;
}

/**
 * @param given answers to this very revision, as the record keeps them, each with how many gave it
 * @returns nothing where an answer has no parts
 */
export function partFigures(task: Task, given: readonly { given: string; answers: number }[]): PartFigures[] {
  const of = given.reduce((sum, { answers }) => sum + answers, 0);
  const counted = (place: number, isRight: (given: string) => boolean): PartFigures => {
    return { place, of, right: given.reduce((sum, one) => sum + (isRight(one.given) ? one.answers : 0), 0) };
  };
  switch (task.kind) {
    case 'several':
      return task.statements.map(({ place, holds }) => counted(place, (text) => text[place] === (holds ? 't' : 'f')));
    case 'pairs':
      return task.lefts.map(({ place, right }) => counted(place, (text) => pairsGiven(text)[place] === right));
    case 'order': {
      const ranks = [...task.steps].sort((a, b) => a.place - b.place).map(({ rank }) => rank);
      // Steps that may change places are right in either of their places.
      return task.steps.map(({ place, rank }) =>
        counted(place, (text) => ranks[orderGiven(task, text).findIndex((step) => step.place === place)] === rank),
      );
    }
    default:
      return [];
  }
}
