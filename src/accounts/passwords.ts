import type { ZxcvbnFactory } from '@zxcvbn-ts/core';

/**
 * Whether a password would be guessed soon. Judged by a library that knows 49,000 common passwords, the rows of keyboards, repeats,
 * dates and the usual swaps of letters, and reckons how many tries a guesser would need who knows them too.
 */

/** The limits on guessing let through some 400,000 tries a year at one name from one address; with stolen hashes 10^10 take one processor years. */
const fewestGuessesLog10 = 10;

/** Judging takes longer the more letters there are, some 50 ms for so many of the worst. The password itself is never cut. */
const judgedLetters = 40;

/** What anybody would try first here. */
const ofTheSite =
  'rungwise rung wise wobbling nether radio amateur ham club licence license study safety question tutor candidate administrator admin'.split(
    ' ',
  );

const why =
  'That password would be guessed soon, since it follows a pattern or holds words that many people use. Take four or five words that have nothing to do with one another, or with you.';

/**
 * What is wrong with a password in words for its form, or null.
 * @param own names and words that stand near the person, such as their own name
 */
export async function weaknessOf(password: string, own: readonly string[]): Promise<string | null> {
  const judge = await (judging ??= loaded());
  const words = [...ofTheSite, ...own.flatMap((name) => [name, ...name.split(/[^\p{L}\p{N}]+/u)])].filter((word) => [...word].length > 2);
  // Signs between the letters of a common password make it no better.
  const ways = [password, password.replace(/[^\p{L}\p{N}]+/gu, '')].map((text) =>
    [...text.normalize('NFKC')].slice(0, judgedLetters).join(''),
  );
  const guesses = Math.min(
    ...ways.filter((text, index) => index === 0 || text.length > 8).map((text) => judge.check(text, words).guessesLog10),
  );
  return guesses < fewestGuessesLog10 ? why : null;
}

let judging: Promise<ZxcvbnFactory> | undefined;

/** Read when the first password is chosen: most servers run for months without one. */
async function loaded(): Promise<ZxcvbnFactory> {
  const [core, common] = await Promise.all([import('@zxcvbn-ts/core'), import('@zxcvbn-ts/language-common')]);
  return new core.ZxcvbnFactory({ dictionary: common.dictionary, graphs: common.adjacencyGraphs });
}
