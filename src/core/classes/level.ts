/** How a cell of the class grid is read: by its figure first, by its look second. */

export interface CellFacts {
  /** The chance that the cell tells of; null when nothing was asked. */
  chance: number | null;
  met: number;
  /** Questions there are. */
  of: number;
}

export type Level = 'none' | 'few' | 'low' | 'mid' | 'high';

/** One or two questions say little of a topic (our own judgement, no source). */
export const fewQuestions = 3;

/** Below 0.6 low, below 0.8 middling: our own limits (no source). Of few questions nothing is said. */
export function levelOf({ chance, met, of }: CellFacts): Level {
  if (chance === null || met === 0) return 'none';
  if (met < Math.min(fewQuestions, of)) return 'few';
  const shown = Math.round(chance * 100);
  return shown < 60 ? 'low' : shown < 80 ? 'mid' : 'high';
}

export interface Need {
  name: string;
  /** Middle of the outlook; null while too little is known. */
  chance: number | null;
  answers: number;
}

/**
 * Most in need first: those of whom too little is known, the fewest answers first, then the least likely to pass. Whoever has answered
 * nothing at all stands last: what they need is to begin.
 */
export function byNeed(a: Need, b: Need): number {
  if ((a.answers === 0) !== (b.answers === 0)) return a.answers === 0 ? 1 : -1;
  if (a.chance === null || b.chance === null) {
    if (a.chance === null && b.chance === null) return a.answers - b.answers || a.name.localeCompare(b.name, 'en');
    return a.chance === null ? -1 : 1;
  }
  return a.chance - b.chance || a.name.localeCompare(b.name, 'en');
}
