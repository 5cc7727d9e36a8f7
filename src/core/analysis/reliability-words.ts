import { counted } from '../words.js';
import { intervalWords, twoPlaces } from './figure-words.js';
import type { PaperFigures } from './reliability.js';

/** What a tutor can take from the figures of a whole paper. */

export interface ReliabilityPart {
  /** KR-20 with its interval; null below ten candidates. */
  kr20: string | null;
  /** What it says, or why it is not there. */
  kr20Words: string;
  /** Standard error of measurement, in marks; null with the former. */
  sem: string | null;
  semWords: string;
}

/** Below this no figure of the whole paper is shown. */
const fewest = 10;
/** What is usual for a test in a class. */
const usual = 0.7;

export function reliabilityWords(paper: PaperFigures): ReliabilityPart {
  const { n, kr20, kr20Interval, sem } = paper;
  if (n < fewest || kr20 === null || kr20Interval === null || sem === null)
    return { kr20: null, kr20Words: missingWords(paper), sem: null, semWords: '' };
  return {
    kr20: `${twoPlaces(kr20)} (${intervalWords(kr20Interval)})`,
    kr20Words: `${standing(kr20Interval)} A class in which all know about the same gives a low value with the best of papers.`,
    sem: `${sem.toFixed(1)} marks`,
    semWords: `A mark is good to about ${sem.toFixed(1)} up or down: for two candidates of three, what they would have on average over many such papers lies within that.`,
  };
}

function missingWords({ n, k }: PaperFigures): string {
  if (n < fewest) return `Too few to tell: ${n === 0 ? 'nobody' : counted(n, 'candidate')}, and it takes ${fewest}.`;
  return k < 2 ? 'It takes two questions or more.' : 'All have the same mark, so that nothing can be told.';
}

function standing({ low, high }: { low: number; high: number }): string {
  if (low >= usual) return `At or above ${twoPlaces(usual)}, which is usual for a test in a class.`;
  if (high < usual) return `Below ${twoPlaces(usual)}, which is usual for a test in a class: take the marks as a rough guide.`;
  return `Too few answers to tell whether it reaches ${twoPlaces(usual)}, which is usual for a test in a class.`;
}

/**
 * How many results lie so near the pass mark that they might be other ones another time.
 * @param totals marks of those who handed in
 * @returns null where the error of a mark is not known
 */
export function nearPassMark({ n, sem }: PaperFigures, totals: readonly number[], passMark: number): string | null {
  if (n < fewest || sem === null) return null;
  const near = totals.filter((total) => Math.abs(total - passMark) <= sem).length;
  if (near === 0) return `Nobody is within ${sem.toFixed(1)} marks of the pass mark, ${passMark}.`;
  return `${near} of ${n} ${near === 1 ? 'is' : 'are'} within ${sem.toFixed(1)} marks of the pass mark, ${passMark}: another paper might have gone the other way for ${near === 1 ? 'that candidate' : 'them'}.`;
}
