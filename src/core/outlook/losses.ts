import type { MemoryModel } from '../memory.js';
import { chanceRight, firstSightChances, type FirstSights, type OutlookQuestion } from './chance.js';
import { grouped, type OutlookInput } from './outlook.js';

/** Where somebody would lose marks on a paper, by objective. */

export interface Loss {
  objective: string;
  topic: string;
  /** Expected wrong answers among the paper's questions that fall on this objective. */
  lost: number;
  /** Questions that fall on it, on average. */
  asked: number;
  /** Questions of it that were met, and how many there are. */
  met: number;
  of: number;
}

/**
 * Each question of a topic is drawn with the same chance, so an objective has its share of the topic's questions; of those the wrong ones
 * are expected. Together they are the paper's questions less the expected right answers.
 */
export function lossesOf({ questions, paper, day, firstSights }: OutlookInput, model: MemoryModel): Loss[] {
  const firstSight = firstSightChances(firstSights);
  const losses = new Map<string, Loss>();
  for (const { questions: own, asked, topic } of grouped(questions, paper)) {
    const drawn = asked / own.length;
    for (const question of own) {
      const loss = losses.get(question.objective) ?? { objective: question.objective, topic, lost: 0, asked: 0, met: 0, of: 0 };
      loss.lost += drawn * (1 - chanceRight(question, day, firstSight(topic), model, 0));
      loss.asked += drawn;
      loss.met += question.memory === null ? 0 : 1;
      loss.of += 1;
      losses.set(question.objective, loss);
    }
  }
  return [...losses.values()];
}

/**
 * By topic: the chance of being right on one of its questions, drawn at random and asked before or not; what the outlook counts, without
 * its doubt.
 */
export function topicChances(
  questions: readonly OutlookQuestion[],
  firstSights: readonly FirstSights[],
  day: number,
  model: MemoryModel,
): Map<string, number> {
  const firstSight = firstSightChances(firstSights);
  const sums = new Map<string, { right: number; count: number }>();
  for (const question of questions) {
    const sum = sums.get(question.topic) ?? { right: 0, count: 0 };
    sum.right += chanceRight(question, day, firstSight(question.topic), model, 0);
    sum.count += 1;
    sums.set(question.topic, sum);
  }
  return new Map([...sums].map(([topic, { right, count }]) => [topic, right / count]));
}
