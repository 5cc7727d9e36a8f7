import { clipParameters, computeDecayFactor, default_w, forgetting_curve, fsrs, generatorParameters } from 'ts-fsrs';
import { z } from 'zod';

/**
 * What is remembered and for how long: the one file that sees the scheduling library (FSRS-6, 21 weights).
 *
 * Only its arithmetic of states is used. Days are whole numbers in the candidate's own calendar, counted by us, because
 * the library counts UTC days in one place and periods of 24 hours in another. Due days are worked out here too, since
 * its cap on intervals can be exceeded. Wrong input is refused here, since the library repairs it in silence.
 */

/** 1 forgotten, 2 recalled with doubt, 3 recalled. 4 exists in the model and is never set by Rungwise itself. */
export type Rating = 1 | 2 | 3 | 4;

export interface Memory {
  /** Days until the chance to recall falls to 0.9; 0.001 to 36,500. */
  stability: number;
  /** 1 to 10. */
  difficulty: number;
  /** Day number of the last update. */
  lastDay: number;
}

export const longestStability = 36_500;
export const defaultWeights: readonly number[] = [...default_w];

const weightsSchema = z.array(z.number()).length(21);
/** By hand, since it runs for every step of a replay. */
function checkState({ stability, difficulty }: Memory): void {
  if (!(stability >= 0.001 && stability <= longestStability)) throw new RangeError(`a stability of ${stability} days cannot be`);
  if (!(difficulty >= 1 && difficulty <= 10)) throw new RangeError(`a difficulty of ${difficulty} cannot be`);
}

/** The memory model for one set of weights. */
export interface MemoryModel {
  /** The curve of forgetting: recall = (1 + factor · days / stability) ^ decay. For what the database works out over many people. */
  readonly curve: { decay: number; factor: number };
  /** Chance (0 to 1) that what was last met on `memory.lastDay` would be recalled on `day`. */
  recall(memory: Memory, day: number): number;
  /** The memory after an answer on `day`; `before` is null at first sight. */
  after(before: Memory | null, day: number, rating: Rating): Memory;
  /** First day on which the chance to recall is no longer above `wanted` (0.7 to 0.97); at least the day after. */
  dueDay(memory: Memory, wanted?: number): number;
}

/**
 * @throws RangeError when there are not 21 finite weights, or one lies outside the range the model is defined for.
 */
export function memoryModel(weights: readonly number[] = defaultWeights): MemoryModel {
  const w = checkedWeights(weights);
  const algorithm = fsrs(generatorParameters({ w, enable_fuzz: false, enable_short_term: true, learning_steps: [], relearning_steps: [] }));
  const { decay, factor } = computeDecayFactor(w);

  const recall = (memory: Memory, day: number): number => {
    const gap = elapsed(memory, day);
    return gap === 0 ? 1 : forgetting_curve(w, gap, memory.stability);
  };

  const after = (before: Memory | null, day: number, rating: Rating): Memory => {
    if (![1, 2, 3, 4].includes(rating)) throw new RangeError(`a rating is 1 to 4, not ${String(rating)}`);
    if (!Number.isInteger(day)) throw new RangeError('a day is a whole number');
    if (before !== null) checkState(before);
    const state = before === null ? null : { stability: before.stability, difficulty: before.difficulty };
    const next = algorithm.next_state(state, before === null ? 0 : elapsed(before, day), rating);
    return { stability: clamp(next.stability, 0.001, longestStability), difficulty: clamp(next.difficulty, 1, 10), lastDay: day };
  };

  const dueDay = (memory: Memory, wanted = 0.9): number => {
    if (!(wanted >= 0.7 && wanted <= 0.97)) throw new RangeError('the wanted chance to recall lies between 0.7 and 0.97');
    const days = (memory.stability / factor) * (wanted ** (1 / decay) - 1);
    return memory.lastDay + clamp(Math.round(days), 1, longestStability);
  };

  return { curve: { decay, factor }, recall, after, dueDay };
}

/** A clock that went backwards (another time zone, a reset) counts as the same day, never as a negative gap. */
function elapsed(memory: Memory, day: number): number {
  return Math.max(0, day - memory.lastDay);
}

function checkedWeights(weights: readonly number[]): number[] {
  const parsed = weightsSchema.safeParse(weights);
  if (!parsed.success) throw new RangeError('the memory model takes 21 finite weights');
  const clipped = clipParameters([...parsed.data], 0, true);
  const outside = clipped.findIndex((value, index) => value !== parsed.data[index]);
  if (outside >= 0) throw new RangeError(`weight ${outside} is ${parsed.data[outside]}, outside the range of the model`);
  return parsed.data;
}

const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));
