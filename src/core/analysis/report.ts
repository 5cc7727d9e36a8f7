import type { Analysis, QuestionFigures } from './analyse.js';
import { expectedByChance } from './by-chance.js';
import { bandOf, judgeQuestion, type Judged, type Verdict } from './flags.js';

/** The figures of a table with what they are a sign of, for the page and the command alike. */

export interface JudgedQuestion {
  figures: QuestionFigures;
  verdict: Verdict;
}

export const judgeAll = ({ questions }: Analysis): JudgedQuestion[] =>
  questions.map((figures) => ({ figures, verdict: judgeQuestion(judgedOf(figures)) }));

/** Where a table says only right or wrong, nothing is known of guessing. */
function judgedOf({ n, right, options, itemRest, itemRestInterval, upperLower27, key }: QuestionFigures): Judged {
  const own = options.flatMap(({ option, count, itemRest: correlation, itemRestInterval: interval }) =>
    option === null ? [] : [{ text: named(option), count, correlation, interval, key: option === key }],
  );
  return { n, right, options: own, chance: own.length === 0 ? 0 : 1 / own.length, itemRest, itemRestInterval, upperLower27 };
}

/** A letter stands by itself in a sentence; anything else, such as a number, is set apart. */
const named = (option: string): string => (/^\p{L}$/u.test(option) ? option : `“${option}”`);

/** What may be read from this many candidates, in words. */
export function bandWords(n: number): string {
  switch (bandOf(n)) {
    case 'counts':
      return 'With fewer than 10 candidates, go by the counts: nothing else can be told yet.';
    case 'interval':
      return 'With fewer than 30 candidates, go by the intervals: where one is wide, more answers are needed.';
    case 'provisional':
      return 'With fewer than 100 candidates, the words good, marginal and poor are for the time being.';
    case 'full':
      return 'There are answers enough for words such as good, marginal and poor.';
  }
}

/** How many questions seem bad by chance alone; null where there is nothing to count. */
export function chanceWords({ paper: { n, k }, questions }: Analysis): string | null {
  const expected = expectedByChance(n, k);
  if (bandOf(n) === 'counts' || expected === null) return null;
  const wrong = questions.reduce((sum, { options }) => sum + Math.max(0, options.filter(({ option }) => option !== null).length - 1), 0);
  const sound = `Of ${k} sound questions before ${n} candidates, about ${about(expected.below20)} would show a correlation below 0.20 and about ${about(expected.below0)} one below 0, by chance alone.`;
  const options = wrong === 0 ? '' : ` Of ${wrong} wrong options up to ${about(wrong * 0.025)} could be pointed at by chance.`;
  return `${sound}${options} So a sign goes by the end of the interval, and is still no proof: read the question.`;
}

/** Whole where it is large, with one place where it is small. */
const about = (count: number): string => (count >= 9.95 ? count.toFixed(0) : count < 0.05 ? '0' : count.toFixed(1));
