import { dueDayOf } from '../plan/value.js';
import type { Memory, MemoryModel } from '../memory.js';

/** A syllabus as ladders: each topic one, each objective a rung, and how firmly somebody stands on it. */

/** `none`: nothing of it met yet. */
export type Footing = 'firm' | 'loose' | 'none';

export interface ProgressQuestion {
  slug: string;
  topic: string;
  topicTitle: string;
  objective: string;
  objectiveTitle: string;
  weight: number;
  memory: Memory | null;
  surelyWrong: boolean;
}

export interface Rung {
  objective: string;
  title: string;
  footing: Footing;
  /** How many of its questions were met. */
  met: number;
  of: number;
  /** Mean chance (0 to 1) to recall those met on the day after `day`; null while none was. */
  recall: number | null;
  /** Whether somebody was sure of a wrong answer here, and has not had it right since. */
  surelyWrong: boolean;
}

export interface Ladder {
  topic: string;
  title: string;
  /** From the ground up. */
  rungs: Rung[];
}

/** Firm is a rung of which at least half was met, of which so much will be recalled tomorrow, and without a sure mistake. */
export const firmAt = { met: 0.5, recall: 0.85 } as const;

/** Ladders in the order of the questions, rungs in the order of their codes. @param day the number of today */
export function laddersOf(questions: readonly ProgressQuestion[], day: number, model: MemoryModel): Ladder[] {
  return [...groups(questions, topicKey).values()].map((own) => ({
    topic: own[0]?.topic ?? '',
    title: own[0]?.topicTitle ?? '',
    rungs: [...groups(own, ({ objective }) => objective).values()]
      .map((of) => rungOf(of, day, model))
      .sort((a, b) => a.objective.localeCompare(b.objective, 'en', { numeric: true })),
  }));
}

const topicKey = ({ slug, topic }: ProgressQuestion): string => `${slug}/${topic}`;

function groups<T>(all: readonly T[], keyOf: (each: T) => string): Map<string, T[]> {
  const found = new Map<string, T[]>();
  for (const each of all) {
    const key = keyOf(each);
    const own = found.get(key);
    if (own === undefined) found.set(key, [each]);
    else own.push(each);
  }
  return found;
}

function rungOf(questions: readonly ProgressQuestion[], day: number, model: MemoryModel): Rung {
  const [first] = questions;
  const met = questions.flatMap(({ memory }) => (memory === null ? [] : [model.recall(memory, day + 1)]));
  const recall = met.length === 0 ? null : met.reduce((sum, each) => sum + each, 0) / met.length;
  const surelyWrong = questions.some((question) => question.surelyWrong);
  const firm = recall !== null && recall >= firmAt.recall && met.length >= questions.length * firmAt.met && !surelyWrong;
  return {
    objective: first?.objective ?? '',
    title: first?.objectiveTitle ?? '',
    footing: recall === null ? 'none' : firm ? 'firm' : 'loose',
    met: met.length,
    of: questions.length,
    recall,
    surelyWrong,
  };
}

export interface Fading {
  objective: string;
  title: string;
  /** The first day on which one of its questions is likely enough to be forgotten to be asked again. */
  day: number;
  questions: number;
}

/** What fades next: of the coming week the objectives whose questions are to be asked again, the soonest first. */
export function fadingNext(questions: readonly ProgressQuestion[], day: number, model: MemoryModel): Fading[] {
  const due = questions.flatMap((question) => {
    if (question.memory === null) return [];
    const on = Math.max(day, dueDayOf(question.memory, question.weight, null, model));
    return on > day + 7 ? [] : [{ ...question, on }];
  });
  return [...groups(due, ({ slug, objective }) => `${slug}/${objective}`).values()]
    .map((own) => ({
      objective: own[0]?.objective ?? '',
      title: own[0]?.objectiveTitle ?? '',
      day: Math.min(...own.map(({ on }) => on)),
      questions: own.length,
    }))
    .sort((a, b) => a.day - b.day || b.questions - a.questions || a.objective.localeCompare(b.objective, 'en', { numeric: true }));
}
