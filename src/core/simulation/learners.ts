import { defaultWeights, memoryModel, type Memory, type MemoryModel, type Rating } from '../memory.js';
import { randomFrom } from '../random.js';

/**
 * Simulated learners of three kinds (scheduling study, section 6). Only the first is of the planner's own kind; the others forget in ways
 * that it does not expect, so that a plan is not praised for knowing its own model. The constants are those of the study.
 */

export const learnerKinds = ['as-expected', 'perturbed', 'traces'] as const;
export type LearnerKind = (typeof learnerKinds)[number];

export interface Learner {
  /** Chance that the item is recalled on a day. */
  recall(item: number, day: number): number;
  /** Meets the item: recalled or not is drawn, and the item is learnt again. `ease` is how it felt when recalled. */
  meet(item: number, day: number): { recalled: boolean; ease: 'hard' | 'good' | 'easy' };
}

/** Draws that depend on learner, item and repetition only, so that every policy meets the same luck. */
const luck = (seed: number, item: number, repetition: number, what: string): number =>
  randomFrom(`${what} ${seed} ${item} ${repetition}`).next();

const normalOf = (key: string): number => {
  const random = randomFrom(key);
  return Math.sqrt(-2 * Math.log(1 - random.next())) * Math.cos(2 * Math.PI * random.next());
};

export function learner(kind: LearnerKind, seed: number): Learner {
  return kind === 'traces' ? traceLearner(seed) : stabilityLearner(kind, seed);
}

/** 10 to 40 % of the items are known before the first day. */
const knownShare = (seed: number): number => 0.1 + 0.3 * randomFrom(`known share ${seed}`).next();
const knownBefore = (seed: number, item: number): boolean => randomFrom(`known ${seed} ${item}`).next() < knownShare(seed);

const easeOf = (draw: number, first: boolean): { rating: Rating; ease: 'hard' | 'good' | 'easy' } => {
  if (first) return draw < 0.8 ? { rating: 3, ease: 'good' } : { rating: 4, ease: 'easy' };
  if (draw < 0.15) return { rating: 2, ease: 'hard' };
  return draw < 0.9 ? { rating: 3, ease: 'good' } : { rating: 4, ease: 'easy' };
};

/** The model of the scheduler, plain or with other weights, items that differ and another curve of forgetting. */
function stabilityLearner(kind: 'as-expected' | 'perturbed', seed: number): Learner {
  const own = kind === 'perturbed';
  const model: MemoryModel = memoryModel(own ? perturbedWeights(seed) : defaultWeights);
  const shape = 0.45 + 0.4 * randomFrom(`shape ${seed}`).next();
  const factor = (item: number): number => (own ? Math.exp(0.5 * normalOf(`factor ${seed} ${item}`)) : 1);
  const offset = (item: number): number => (own ? 1.2 * normalOf(`offset ${seed} ${item}`) : 0);
  const memories = new Map<number, Memory>();
  const met = new Map<number, number>();

  function recall(item: number, day: number): number {
    const memory = memories.get(item);
    if (memory === undefined) return knownBefore(seed, item) ? 1 : 0;
    if (!own) return model.recall(memory, day);
    return 0.9 ** (((day - memory.lastDay) / (memory.stability * factor(item))) ** shape);
  }

  function meet(item: number, day: number): ReturnType<Learner['meet']> {
    const repetition = met.get(item) ?? 0;
    met.set(item, repetition + 1);
    const recalled = luck(seed, item, repetition, 'recall') < recall(item, day);
    const { rating, ease } = easeOf(luck(seed, item, repetition, 'ease'), repetition === 0);
    const next = model.after(memories.get(item) ?? null, day, recalled ? rating : 1);
    const difficulty = repetition === 0 ? clamp(next.difficulty + offset(item), 1, 10) : next.difficulty;
    memories.set(item, { ...next, difficulty });
    return { recalled, ease };
  }

  return { recall, meet };
}

/** First stabilities log-normal 0.4, weights of growth and of lapses 0.2 to 0.25, the exponent of growth shifted by up to a quarter. */
function perturbedWeights(seed: number): number[] {
  const spread = new Map<number, number>([
    ...[0, 1, 2, 3].map((index) => [index, 0.4] as const),
    ...[8, 9, 10].map((index) => [index, 0.2] as const),
    ...[11, 12, 13, 14].map((index) => [index, 0.25] as const),
  ]);
  const weights = defaultWeights.map((weight, index) => weight * Math.exp((spread.get(index) ?? 0) * normalOf(`weight ${seed} ${index}`)));
  weights[9] = (weights[9] as number) * (0.75 + 0.5 * randomFrom(`growth ${seed}`).next());
  const limits: readonly (readonly [number, number, number])[] = [
    ...[0, 1, 2, 3].map((index) => [index, 0.1, 90] as const),
    [8, 0.1, 4.5],
    [9, 0.01, 0.8],
    [10, 0.01, 3.5],
    [11, 0.5, 5],
    [12, 0.01, 0.25],
    [13, 0.05, 0.9],
    [14, 0.1, 4],
  ];
  for (const [index, low, high] of limits) weights[index] = clamp(weights[index] as number, low, high);
  return weights;
}

/** Each exposure leaves a trace that decays as a power of time, faster when the item was still active; recall is logistic in their sum. */
function traceLearner(seed: number): Learner {
  const threshold = -0.86 + 0.2 * normalOf(`threshold ${seed}`);
  const traces = new Map<number, { day: number; decay: number }[]>();
  const met = new Map<number, number>();

  /** The summed strength of what earlier meetings left, each by the hours since. */
  const activity = (item: number, day: number): number =>
    (traces.get(item) ?? []).reduce((total, trace) => total + Math.max(1, 24 * (day - trace.day)) ** -trace.decay, 0);

  function recall(item: number, day: number): number {
    if (!traces.has(item)) return knownBefore(seed, item) ? 1 : 0;
    const shift = 0.25 * normalOf(`shift ${seed} ${item}`);
    return 1 / (1 + Math.exp((threshold + shift - Math.log(activity(item, day))) / 0.25));
  }

  function meet(item: number, day: number): ReturnType<Learner['meet']> {
    const repetition = met.get(item) ?? 0;
    met.set(item, repetition + 1);
    const recalled = luck(seed, item, repetition, 'recall') < recall(item, day);
    const before = traces.get(item) ?? [];
    traces.set(item, [...before, { day, decay: 0.18 + 0.22 * activity(item, day) }]);
    return { recalled, ease: easeOf(luck(seed, item, repetition, 'ease'), repetition === 0).ease };
  }

  return { recall, meet };
}

const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));
