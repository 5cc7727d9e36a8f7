/** The misconceptions behind wrong answers, by how many people of a class have them. */

/** The last answer of one person to one question. */
export interface LastAnswer {
  personId: number;
  questionId: number;
  objective: string;
  right: boolean;
  sure: boolean;
  /** What was chosen, or the mistake that led to a number; null where neither can be named. */
  mistake: string | null;
}

export interface Mistake {
  questionId: number;
  mistake: string;
  /** Who made it when last asked, and who was asked that question at all. */
  people: number;
  of: number;
  /** Of those who made it, how many were sure. */
  sure: number;
}

/** One person's mistake may be a slip (our own judgement, no source). */
const fewest = 2;

/** @returns those that at least two people made, of most people first; only what each person answered last counts */
export function commonMistakes(answers: readonly LastAnswer[]): Mistake[] {
  const asked = new Map<number, number>();
  for (const { questionId } of answers) asked.set(questionId, (asked.get(questionId) ?? 0) + 1);
  const found = new Map<string, Mistake>();
  for (const { questionId, right, sure, mistake } of answers) {
    if (right || mistake === null) continue;
    const key = `${questionId} ${mistake}`;
    const held = found.get(key) ?? { questionId, mistake, people: 0, of: asked.get(questionId) ?? 0, sure: 0 };
    held.people += 1;
    held.sure += sure ? 1 : 0;
    found.set(key, held);
  }
  return [...found.values()]
    .filter(({ people }) => people >= fewest)
    .sort((a, b) => b.people - a.people || b.sure - a.sure || b.people / b.of - a.people / a.of || a.questionId - b.questionId);
}

/** A question to open a meeting with. */
export interface OpenerQuestion {
  questionId: number;
  objective: string;
  /** Members whose last answer to it was wrong. */
  wrong: number;
}

/**
 * In turn from each objective the question that most of the class have wrong, so that no objective takes the opener for itself.
 * @param objectives those that are taught, the most urgent first
 */
export function openerOf(objectives: readonly string[], questions: readonly OpenerQuestion[], most: number): OpenerQuestion[] {
  const queues = objectives.map((objective) =>
    questions.filter((question) => question.objective === objective).sort((a, b) => b.wrong - a.wrong || a.questionId - b.questionId),
  );
  const chosen: OpenerQuestion[] = [];
  for (let turn = 0; chosen.length < most && queues.some((queue) => queue.length > turn); turn += 1)
    for (const queue of queues) {
      const next = queue[turn];
      if (next !== undefined && chosen.length < most) chosen.push(next);
    }
  return chosen;
}
