import { wilsonInterval } from '../outlook/wilson.js';
import { certainties, type Certainty } from '../questions/schema.js';

/** How well "sure" means sure: what was said of answers, held against how they were. */

export interface CertaintyCount {
  certainty: Certainty;
  answers: number;
  right: number;
}

export interface CertaintyRow extends CertaintyCount {
  /** Share right (0 to 1) and its 95 % Wilson interval; null while nothing was said so. */
  share: { value: number; low: number; high: number } | null;
}

/** One row for each certainty, the surest first. */
export function certaintyRows(counts: readonly CertaintyCount[]): CertaintyRow[] {
  return certainties.map((certainty) => {
    const { answers, right } = counts.find((count) => count.certainty === certainty) ?? { answers: 0, right: 0 };
    const interval = wilsonInterval(right, answers);
    return { certainty, answers, right, share: interval === null ? null : { value: right / answers, ...interval } };
  });
}

/** Fewer sure answers say nothing of being sure. */
export const fewestSure = 20;

/** Somebody who is sure ought to be right this often. */
const sureAt = 0.9;

/** `under`: surer than right, and not by chance. `well`: sure means sure. `open`: it may be either. */
export type Sureness = 'too-few' | 'under' | 'open' | 'well';

export function surenessOf(rows: readonly CertaintyRow[]): Sureness {
  const sure = rows.find(({ certainty }) => certainty === 'sure');
  if (sure === undefined || sure.share === null || sure.answers < fewestSure) return 'too-few';
  if (sure.share.high < sureAt) return 'under';
  return sure.share.value >= sureAt ? 'well' : 'open';
}
