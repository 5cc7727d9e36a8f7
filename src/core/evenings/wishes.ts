import { mostQuestions } from './choose.js';

/** What a tutor asks an evening to hold: codes or numbers of questions, codes of objectives, codes of topics, in any mixture. */

/** A question of the bank as a wish can name it. */
export interface NamedQuestion {
  questionId: number;
  code: string;
  slug: string;
  /** Codes, which two packs may share. */
  objective: string;
  topic: string;
  /** Null where it can be asked in an evening; else why not. */
  unfit: string | null;
}

export interface Wishes {
  questionIds: number[];
  /** Each stands for one question of it, the most needed. */
  objectives: string[];
  /** The rest is filled from these; from everywhere where there are none. */
  topics: string[];
}

export type WishesRead = { ok: true; wishes: Wishes } | { ok: false; why: string };

/** Letters of a form that names twenty questions lie far below. */
export const mostTyped = 1000;

/**
 * @param bank what can be named; of two packs with one code that of the class's pack should stand first
 * @returns why it cannot be read: the first word that names nothing, or a question that cannot be asked there
 */
export function readWishes(typed: string, bank: readonly NamedQuestion[]): WishesRead {
  const wishes: Wishes = { questionIds: [], objectives: [], topics: [] };
  const add = <T>(list: T[], what: T): void => void (list.includes(what) || list.push(what));
  for (const word of typed.split(/[\s,;]+/).filter((each) => each !== '')) {
    const upper = word.toUpperCase();
    const question = bank.find(({ questionId, code }) => code.toUpperCase() === upper || String(questionId) === word);
    if (question !== undefined) {
      if (question.unfit !== null) return { ok: false, why: `${question.code} ${question.unfit}.` };
      add(wishes.questionIds, question.questionId);
    } else if (bank.some(({ objective }) => objective === upper)) add(wishes.objectives, upper);
    else if (bank.some(({ topic }) => topic === upper)) add(wishes.topics, upper);
    else return { ok: false, why: `“${word.slice(0, 40)}” is no question, objective or topic of the bank.` };
  }
  const count = wishes.questionIds.length + wishes.objectives.length;
  if (count > mostQuestions) return { ok: false, why: `That is ${count} questions: an evening has ${mostQuestions} at most.` };
  return { ok: true, wishes };
}

/** How questions are named in a form: by code, or by number where another pack's question has the code. */
export function namesOf(questionIds: readonly number[], bank: readonly NamedQuestion[]): string[] {
  return questionIds.flatMap((id) => {
    const question = bank.find(({ questionId }) => questionId === id);
    if (question === undefined) return [];
    const first = bank.find(({ code }) => code.toUpperCase() === question.code.toUpperCase());
    return [first === question ? question.code : String(id)];
  });
}
