import type { Memory, MemoryModel } from '../memory.js';

/** The chance of a right answer on a paper. */

/** Chance of hitting the key without knowing it, by kind; for numbers it is what simulated learners had (scheduling study, section 7). */
const guessing: Readonly<Record<string, number>> = { single: 0.25, place: 0.25, several: 0.06, order: 0.05, pairs: 0.05, numeric: 0.02 };

export interface OutlookQuestion {
  topic: string;
  objective: string;
  kind: string;
  memory: Memory | null;
  /** A misconception draws to one wrong option, so luck does not help. */
  surelyWrong: boolean;
  seconds: number;
}

/**
 * What was predicted was too high by 2 to 5 points of recall for simulated learners who forget otherwise than the model, with a spread as
 * large (scheduling study, section 6): so recall is told as a range from ten points below to one above.
 */
export const damping = { low: -0.1, high: 0.01 } as const;

/**
 * Recall was rated without luck, so luck is added here, once. An unseen question goes by how many of its topic were right at first
 * sight, and these hold luck already.
 * @param shift added to the chance to recall, or to be right where nothing was met
 */
export function chanceRight(question: OutlookQuestion, day: number, firstSight: number, model: MemoryModel, shift: number): number {
  if (question.memory === null) return within(firstSight + shift);
  const recall = within(model.recall(question.memory, day) + shift);
  const luck = question.surelyWrong ? 0 : (guessing[question.kind] ?? 0.25);
  return recall + (1 - recall) * luck;
}

const within = (chance: number): number => Math.min(1, Math.max(0, chance));

export interface FirstSights {
  topic: string;
  right: number;
  met: number;
}

/** As many answers as a topic's own few weigh against all topics together. */
const weightOfAll = 5;

/** Chance of being right at first sight, by topic, drawn towards that of all topics while answers are few. */
export function firstSightChances(sights: readonly FirstSights[]): (topic: string) => number {
  const right = sights.reduce((sum, each) => sum + each.right, 0);
  const met = sights.reduce((sum, each) => sum + each.met, 0);
  // Before any answer it is one in four, which is what luck gives.
  const overall = (1 + right) / (4 + met);
  const byTopic = new Map(sights.map((each) => [each.topic, (each.right + weightOfAll * overall) / (each.met + weightOfAll)]));
  return (topic) => byTopic.get(topic) ?? overall;
}
