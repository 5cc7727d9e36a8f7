import type { Memory } from '../memory.js';

/** A question that may be asked. */
export interface PlanCandidate {
  questionId: number;
  objective: string;
  topic: string;
  /** 1 to 3: how much the objective matters. */
  weight: number;
  /** Its chance of being on the paper, as a multiple of the mean over all questions. */
  paperWeight: number;
  memory: Memory | null;
  /** Was sure and wrong when last answered. */
  surelyWrong: boolean;
  /** About how long an answer takes. */
  seconds: number;
}

/** Time for one answer with its reading: our own assumption until a candidate's own times are known (no source). */
export const secondsFor = { options: 40, number: 90 } as const;

export interface PlannedQuestion {
  questionId: number;
  /** `new`: never asked; `fading`: likely to be forgotten; `gain`: brings most on the exam day; `early`: nothing presses, and there is time. */
  reason: 'new' | 'fading' | 'gain' | 'early';
}

interface PaperShares {
  pack: string;
  shares: Readonly<Record<string, number>>;
}

/** What a question of another pack than the paper's counts for: it is not on the paper, and somebody wrote it for a reason. */
const besideThePaper = 0.25;

/**
 * Chances of being on a paper that draws its questions evenly within each topic, as multiples of the mean.
 * Without a paper every question counts the same.
 */
export function paperWeights(
  pool: readonly { questionId: number; pack: string; topic: string }[],
  paper: PaperShares | null,
): Map<number, number> {
  if (paper === null) return new Map(pool.map(({ questionId }) => [questionId, 1]));
  const counts = new Map<string, number>();
  for (const { pack, topic } of pool) if (pack === paper.pack) counts.set(topic, (counts.get(topic) ?? 0) + 1);
  const inPack = [...counts.values()].reduce((sum, count) => sum + count, 0);
  const asked = [...counts.keys()].reduce((sum, topic) => sum + (paper.shares[topic] ?? 0), 0);
  if (asked === 0) return paperWeights(pool, null);
  return new Map(
    pool.map(({ questionId, pack, topic }) => [
      questionId,
      pack === paper.pack ? Math.max(0.05, ((paper.shares[topic] ?? 0) / (counts.get(topic) ?? 1)) * (inPack / asked)) : besideThePaper,
    ]),
  );
}
