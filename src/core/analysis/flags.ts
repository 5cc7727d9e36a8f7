import { wilsonInterval } from '../outlook/wilson.js';
import type { Interval } from './correlation.js';
import { intervalWords, listed, percentWords, twoPlaces } from './figure-words.js';

/**
 * What the answers to one question are a sign of. A sign goes by the end of an interval and never by the estimate, so that a small class
 * raises no false alarm. The thresholds are those of the trade's textbooks (Ebel 1965; Haladyna and Downing 1993), the numbers of
 * candidates from which they are used are this project's.
 */

export interface JudgedOption {
  /** Its letter or its words, as it is to be named. */
  text: string;
  count: number;
  /** Of having chosen it with the rest of the paper; null where that cannot be told. */
  correlation: number | null;
  interval: Interval | null;
  key: boolean;
}

export interface Judged {
  /** Candidates who answered, each once. */
  n: number;
  right: number;
  /** Blanks are no option. */
  options?: readonly JudgedOption[];
  /** Of being right by guessing: 1 / options; 0 for a typed answer. */
  chance: number;
  itemRest: number | null;
  itemRestInterval: Interval | null;
  upperLower27?: number | null;
}

/** How much may be said: below 10 candidates counts, below 30 intervals, below 100 for the time being. */
export type Band = 'counts' | 'interval' | 'provisional' | 'full';

export interface Sign {
  id: 'below-chance' | 'hard' | 'negative' | 'weak' | 'strong-chose-wrong' | 'hardly-chosen' | 'not-chosen' | 'easy';
  /** `look`: somebody should read the question. `information`: nothing to do. */
  severity: 'look' | 'information';
  text: string;
  todo: string;
}

export interface Verdict {
  band: Band;
  signs: Sign[];
  /** Too few answers to tell whether anything is wrong. */
  tooFew: boolean;
  /** A word of Ebel's table, from 30 candidates on; null where none is due. */
  quality: { word: string; provisional: boolean } | null;
}

const hardBelow = 0.3;
const easyAbove = 0.9;
/** A correlation below this is poor in practice. */
const poorBelow = 0.15;
/** A wrong option that fewer choose does no work. */
const chosenBelow = 0.05;
/** From here on an option that nobody chose is evidence of a rate below 5 % (Wilson, two-sided). */
const evidenceFrom = 73;

export const bandOf = (n: number): Band => (n < 10 ? 'counts' : n < 30 ? 'interval' : n < 100 ? 'provisional' : 'full');

/** @throws RangeError unless 0 <= right <= n */
export function judgeQuestion(judged: Judged): Verdict {
  const band = bandOf(judged.n);
  const facility = wilsonInterval(judged.right, judged.n);
  if (facility === null) return { band, signs: [], tooFew: true, quality: null };
  const signs = [
    ...facilitySigns(judged, facility),
    ...(band === 'counts' ? [] : [...correlationSigns(judged, facility), ...optionSigns(judged, facility)]),
  ];
  const said = signs.some(({ id, severity }) => severity === 'look' || id === 'easy' || id === 'weak');
  const clear = facility.low >= hardBelow && band !== 'counts' && (judged.itemRestInterval?.low ?? 0) > 0;
  return { band, signs, tooFew: !said && !clear, quality: qualityOf(judged, band) };
}

function facilitySigns({ n, right, chance }: Judged, { low, high }: Interval): Sign[] {
  const count = `${right} of ${n}`;
  if (high < chance)
    return [
      {
        id: 'below-chance',
        severity: 'look',
        text: `Fewer are right than by guessing: ${count}, where guessing gives ${percentWords(chance)}.`,
        todo: 'Check the key first. If it is right, find what draws everybody to the wrong answer, and say the question more plainly.',
      },
    ];
  if (high < hardBelow)
    return [
      {
        id: 'hard',
        severity: 'look',
        text: `Hard: ${count} are right, which goes with ${percentWords(high)} at the most.`,
        todo: 'Check the key and read the question for a trap in its words. If both are in order, teach this again; a hard question may stay.',
      },
    ];
  if (low > easyAbove)
    return [
      {
        id: 'easy',
        severity: 'information',
        text: `Easy: ${count} are right.`,
        todo: 'Nothing to mend: safety is what everybody should know.',
      },
    ];
  return [];
}

function correlationSigns({ itemRest, itemRestInterval }: Judged, facility: Interval): Sign[] {
  if (itemRest === null || itemRestInterval === null) return [];
  const figures = `correlation with the rest ${twoPlaces(itemRest)} (${intervalWords(itemRestInterval)})`;
  if (itemRestInterval.high < 0)
    return [
      {
        id: 'negative',
        severity: 'look',
        text: `Those who know more are more often wrong here: ${figures}.`,
        todo: 'Check the key, and look for a second right answer or a hint that misleads those who think further.',
      },
    ];
  if (itemRestInterval.high >= poorBelow || !leavesRoom(facility)) return [];
  return [
    {
      id: 'weak',
      severity: 'information',
      text: `Those who know more are hardly more often right here: ${figures}.`,
      todo: 'Look whether it can be answered without knowing the subject, or only by a guess. It may stay if it asks what all should know.',
    },
  ];
}

/** With nearly everybody right, no question can part people much, and few are left to choose a wrong option. */
const leavesRoom = ({ high }: Interval): boolean => high <= easyAbove;

function optionSigns({ n, options = [] }: Judged, facility: Interval): Sign[] {
  const wrong = options.filter(({ key }) => !key);
  const strong = wrong.flatMap(({ text, count, correlation, interval }): Sign[] => {
    if (correlation === null || interval === null || interval.low <= 0) return [];
    return [
      {
        id: 'strong-chose-wrong',
        severity: 'look',
        text: `${text} is chosen by those who know more: ${count} of ${n}, correlation with the rest ${twoPlaces(correlation)} (${intervalWords(interval)}).`,
        todo: `Ask what speaks for ${text}. If it can be defended, change it or the question; if the key is wrong, mend the key.`,
      },
    ];
  });
  const idle = wrong.filter(({ count }) => leavesRoom(facility) && (wilsonInterval(count, n)?.high ?? 1) < chosenBelow);
  const unseen = wrong.filter((option) => option.count === 0 && !idle.includes(option));
  return [...strong, ...idleSigns(idle, n), ...unseenSigns(unseen, n)];
}

function idleSigns(idle: readonly JudgedOption[], n: number): Sign[] {
  if (idle.length === 0) return [];
  return [
    {
      id: 'hardly-chosen',
      severity: 'information',
      text: `Hardly anybody chooses ${listed(idle.map(({ text, count }) => `${text} (${count} of ${n})`))}.`,
      todo: 'Put a mistake that people do make in its place, or leave it out: three options are usually enough.',
    },
  ];
}

function unseenSigns(unseen: readonly JudgedOption[], n: number): Sign[] {
  if (unseen.length === 0) return [];
  return [
    {
      id: 'not-chosen',
      severity: 'information',
      text: `Not yet chosen: ${listed(unseen.map(({ text }) => text))}.`,
      todo:
        n < evidenceFrom
          ? `Nothing yet: among ${n} that can be chance. From ${evidenceFrom} answers on it means something.`
          : 'Nothing: so many are right that few are left to choose a wrong option.',
    },
  ];
}

/** Ebel's words for the upper-lower index. */
const words = [
  [0.4, 'very good'],
  [0.3, 'reasonable'],
  [0.2, 'marginal'],
] as const;

function qualityOf({ n, right, upperLower27 }: Judged, band: Band): Verdict['quality'] {
  if (upperLower27 === undefined || upperLower27 === null || band === 'counts' || band === 'interval') return null;
  // 0.7 - 0.4 is a little less than 0.3 in a computer.
  const word = words.find(([from]) => upperLower27 + 1e-9 >= from)?.[1] ?? 'poor';
  // With nearly everybody right, or wrong, the index cannot reach 0.20, whatever the question is like.
  const ceiling = Math.min(right, n - right) / n / 0.27;
  return word === 'poor' && ceiling < 0.2 ? null : { word, provisional: band === 'provisional' };
}
