/** Which questions an evening asks, when nobody says: those that the class has most often wrong. */

export interface EveningCandidate {
  questionId: number;
  topic: string;
  /** Unique over all packs. */
  objective: string;
  /** 1 to 3: how much the objective matters. */
  weight: number;
}

/** What the members of a class did with one question. */
export interface ClassFigure {
  /** Members who were sure, and wrong, and have not had it right since. */
  sure: number;
  answers: number;
  wrong: number;
}

export const mostQuestions = 20;

/**
 * The share of wrong answers, with one right and one wrong added (Laplace's rule of succession), so that one wrong answer of one does not
 * outrank nine of ten. Questions that nobody has met come after all that somebody had wrong, and before those that all had right.
 */
export function wrongness(figure: ClassFigure | undefined): number {
  if (figure === undefined || figure.answers === 0) return 0;
  return figure.wrong === 0 ? -1 : (figure.wrong + 1) / (figure.answers + 2);
}

/**
 * Those of most sure mistakes first, then by the share of wrong answers; where nothing is known yet, a topic after the other and what
 * matters most first. Of one objective two only where there are no others.
 * @param recent questions of the last evening: taken only where there are no others
 * @returns at most `count` question ids, in the order found
 */
export function mostWrong(
  pool: readonly EveningCandidate[],
  figures: ReadonlyMap<number, ClassFigure>,
  recent: ReadonlySet<number>,
  count: number,
): number[] {
  const chosen: EveningCandidate[] = [];
  const ofTopic = new Map<string, number>();
  const rank = (each: EveningCandidate): number[] => {
    const figure = figures.get(each.questionId);
    return [
      chosen.some(({ objective }) => objective === each.objective) ? 1 : 0,
      recent.has(each.questionId) ? 1 : 0,
      -(figure?.sure ?? 0),
      -wrongness(figure),
      ofTopic.get(each.topic) ?? 0,
      -each.weight,
      each.questionId,
    ];
  };
  const left = new Set(pool);
  while (chosen.length < count && left.size > 0) {
    const best = least([...left], rank);
    left.delete(best);
    chosen.push(best);
    ofTopic.set(best.topic, (ofTopic.get(best.topic) ?? 0) + 1);
  }
  return chosen.map(({ questionId }) => questionId);
}

function least<T>(list: readonly T[], rank: (each: T) => number[]): T {
  let [best, bestRank] = [list[0] as T, rank(list[0] as T)];
  for (const each of list.slice(1)) {
    const own = rank(each);
    const differs = own.findIndex((value, index) => value !== bestRank[index]);
    if (differs >= 0 && (own[differs] ?? 0) < (bestRank[differs] ?? 0)) [best, bestRank] = [each, own];
  }
  return best;
}
