import type { Memory, MemoryModel } from '../memory.js';

/** What asking a question today is worth. */

/**
 * Expected gain in recall on the exam day by asking today (scheduling study, section 6): recalled and strengthened, or forgotten and
 * learnt anew, against leaving it alone. Shortsighted by nature, so it ranks in the last fortnight only.
 */
export function gainByAsking(memory: Memory, today: number, examDay: number, model: MemoryModel): number {
  const recalled = model.recall(memory, today);
  const after = (rating: 1 | 3) => model.recall(model.after(memory, today, rating), examDay);
  return recalled * after(3) + (1 - recalled) * after(1) - model.recall(memory, examDay);
}

/** Wanted chance to recall where no exam is known, by the weight of the objective. */
export const wantedRecall: Readonly<Record<number, number>> = { 1: 0.85, 2: 0.87, 3: 0.9 };

/**
 * The day on which a question is expected back: when recall has become less likely than wanted, and before the exam in any case.
 * The plan itself looks at chances and not at this day; it is what people are told.
 */
export function dueDayOf(memory: Memory, weight: number, examDay: number | null, model: MemoryModel): number {
  const due = model.dueDay(memory, wantedRecall[weight] ?? 0.87);
  return examDay === null || examDay <= memory.lastDay ? due : Math.max(memory.lastDay + 1, Math.min(due, examDay - 1));
}

/** After the exam: asked again when recall has become less likely than this, and not within these days. */
export const keepSafe = { recall: 0.8, apart: 14 } as const;
