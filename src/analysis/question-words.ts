import { percentWords, twoPlaces, intervalWords } from '../core/analysis/figure-words.js';
import { fewestOthers } from '../core/analysis/first-sight.js';
import type { GatheredFigures, Share } from '../core/analysis/gathered.js';
import { counted } from '../core/words.js';
import type { Scope } from './question-tally-store.js';

/** Figures of one question in words: counts first, and no share without its limits. */

export const scopes: readonly Scope[] = ['class', 'club', 'all'];

export const scopeWords: Readonly<Record<Scope, string>> = { class: 'This class', club: 'All classes', all: 'Everybody here' };

/** 12 of 20 right at first sight, 95 % limits 39 to 78 % */
export function firstSightWords({ n, right, facility }: GatheredFigures): string {
  if (facility === null) return 'Nobody has answered it yet';
  return `${right} of ${n} right at first sight, 95 % limits ${limits(facility)}`;
}

const limits = ({ low, high }: { low: number; high: number }): string => `${percentWords(low).replace(' %', '')} to ${percentWords(high)}`;

export const shareWords = ({ right, of }: Share): string => `${right} of ${of}`;

export function laterWords({ right, of }: Share): string {
  if (of === 0) return 'Nobody has met it again.';
  return `Met again: ${right} of ${counted(of, 'answer')} right. Practice is in these, so they say nothing of the question.`;
}

/** How it goes with the rest, or why that cannot be told. @param fewest people that are needed */
export function restWords({ n, right, held, itemRest, itemRestInterval }: GatheredFigures, fewest: number): string {
  if (held < fewest)
    return `Not told yet: it takes ${fewest} people who have answered ${fewestOthers} other questions or more, and ${held} of those here have.`;
  if (right === 0 || right === n) return `Cannot be told: ${right === 0 ? 'nobody' : 'everybody'} was right, so nothing sets people apart.`;
  if (itemRest === null) return 'Cannot be told: all who can be compared did alike.';
  const between = itemRestInterval === null ? '' : `, 95 % limits ${intervalWords(itemRestInterval)}`;
  return `Correlation with the rest: ${twoPlaces(itemRest)}${between}, from ${counted(held, 'person').replace('persons', 'people')}.`;
}

/** The upper and the lower group; null where there is nothing to compare. */
export function groupWords({ groups, held }: GatheredFigures, fewest: number): string | null {
  if (groups === null || held < fewest) return null;
  const { upper, lower } = groups;
  const difference = upper.right / upper.of - lower.right / lower.of;
  return `Of the ${upper.of} who did best with the rest, ${upper.right} had it right; of the ${lower.of} who did worst, ${lower.right}. Upper-lower index: ${twoPlaces(difference)}.`;
}

/** How many were sure, and wrong; null for nobody. */
export function sureWords({ certainty: { sure } }: GatheredFigures): string | null {
  const wrong = sure.of - sure.right;
  return wrong === 0 ? null : `${wrong === 1 ? 'One was' : `${wrong} were`} sure, and wrong.`;
}
