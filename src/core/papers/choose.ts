import { shuffled, type Random } from '../random.js';

/** Which questions a paper asks: so many of each topic, by the weights of objectives, and nothing that was seen lately if that can be helped. */

export interface PaperCandidate {
  questionId: number;
  topic: string;
  objective: string;
  /** 1 to 3: how much the objective matters. */
  weight: number;
}

type Shares = Readonly<Record<string, number>>;

export interface Shortage {
  topic: string;
  asked: number;
  have: number;
}

/** Topics of which a paper asks more questions than there are. */
export function shortages(pool: readonly PaperCandidate[], shares: Shares): Shortage[] {
  return Object.entries(shares).flatMap(([topic, asked]) => {
    const have = pool.filter((candidate) => candidate.topic === topic).length;
    return have >= asked ? [] : [{ topic, asked, have }];
  });
}

/**
 * The same pool in the same order, shares, recent ones and chance give the same paper.
 * @param recent questions that were seen lately: taken only where a topic has no others left, or where an objective that must have its
 *   turn has no others
 * @returns question ids, topic by topic in the order of the shares; of one objective two only where a topic asks more than it has
 *   objectives. Shorter than asked where the pool is.
 */
export function chooseQuestions(pool: readonly PaperCandidate[], shares: Shares, recent: ReadonlySet<number>, random: Random): number[] {
  return Object.entries(shares).flatMap(([topic, asked]) => {
    const own = pool.filter((candidate) => candidate.topic === topic);
    return chooseOfTopic(own, asked, recent, random);
  });
}

interface Choice {
  weight: number;
  /** In the order to take them: what was not seen lately first. */
  questions: PaperCandidate[];
  fresh: number;
}

function chooseOfTopic(own: readonly PaperCandidate[], asked: number, recent: ReadonlySet<number>, random: Random): number[] {
  let objectives = objectivesOf(own, recent, random);
  const chosen: number[] = [];
  for (let first = true; chosen.length < asked && objectives.length > 0; first = false) {
    // Every objective has its turn before any has a second one; after that what was not seen lately goes first.
    const fresh = objectives.filter((objective) => objective.fresh > 0);
    const open = first || fresh.length === 0 ? objectives : fresh;
    const turn = byChance(open, random).slice(0, asked - chosen.length);
    for (const objective of turn) {
      const next = objective.questions.shift();
      if (next !== undefined) chosen.push(next.questionId);
      objective.fresh -= 1;
    }
    objectives = objectives.filter(({ questions }) => questions.length > 0);
  }
  return chosen;
}

function objectivesOf(own: readonly PaperCandidate[], recent: ReadonlySet<number>, random: Random): Choice[] {
  const found = new Map<string, PaperCandidate[]>();
  for (const candidate of own) found.set(candidate.objective, [...(found.get(candidate.objective) ?? []), candidate]);
  return [...found.values()].map((questions) => {
    const mixed = shuffled(questions, random);
    const fresh = mixed.filter(({ questionId }) => !recent.has(questionId));
    const seen = mixed.filter(({ questionId }) => recent.has(questionId));
    return { weight: questions[0]?.weight ?? 1, questions: [...fresh, ...seen], fresh: fresh.length };
  });
}

/**
 * Objectives in a chance order in which those that weigh more come earlier (Efraimidis and Spirakis 2006: drawing without replacement,
 * each time in proportion to the weights left); those with nothing but what was seen lately come last.
 */
function byChance(objectives: readonly Choice[], random: Random): Choice[] {
  const keyed = objectives.map((objective) => ({ objective, key: -Math.log(1 - random.next()) / objective.weight }));
  keyed.sort((a, b) => Number(a.objective.fresh <= 0) - Number(b.objective.fresh <= 0) || a.key - b.key);
  return keyed.map(({ objective }) => objective);
}
