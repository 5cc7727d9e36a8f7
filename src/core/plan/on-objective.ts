import type { MemoryModel } from '../memory.js';
import type { PlanCandidate, PlannedQuestion } from './candidate.js';

/** As many as are worth going over at one go. */
const most = 8;

/**
 * The questions of one objective, for somebody who asks for just these: those of which least is known come first, and what was answered
 * today is left alone, since a second answer on one day teaches the memory little.
 */
export function objectiveSitting(pool: readonly PlanCandidate[], today: number, model: MemoryModel): PlannedQuestion[] {
  const open = pool.filter(({ memory }) => memory === null || memory.lastDay < today);
  const known = ({ memory, surelyWrong }: PlanCandidate): number => (surelyWrong ? -1 : memory === null ? 0 : model.recall(memory, today));
  return [...open]
    .sort((a, b) => known(a) - known(b) || a.questionId - b.questionId)
    .slice(0, most)
    .map(({ questionId, memory }) => ({ questionId, reason: memory === null ? 'new' : 'fading' }));
}
