import type { Calculation } from '../../shared/safety-maths/calculation.js';

/** Finding a calculation by plain words. */

const topicTitles: Readonly<Record<string, string>> = {
  'electrical-basics': 'Volts, amps and watts',
  'plug-fuses': 'Plugs, fuses and leads',
  'electric-shock': 'Electric shock, RCDs and earths',
  batteries: 'Batteries and d.c. leads',
  capacitors: 'Stored charge',
  heights: 'Ladders, masts and overhead lines',
  workshop: 'Soldering, burns and lifting',
  radio: 'Decibels, feeders and wavelengths',
  exposure: 'RF and people',
  noise: 'Noise',
  weather: 'Lightning',
  outdoors: 'Outdoor sites and generators',
};

export const topicTitle = (topic: string): string => topicTitles[topic] ?? topic;

const idle = new Set(
  'a an and are at by can do does for from how i in is it me much many my need of on or the to what which with'.split(' '),
);
/** Words without the endings that English changes most, so that "fuses" finds "fuse". */
const stem = (word: string): string =>
  word
    .replace(/(?:ies)$/, 'y')
    .replace(/(?<=[a-z]{2}[^s])s$/, '')
    .replace(/(?<=[a-z]{3})(?:ing|ed)$/, '');

const wordsOf = (text: string): string[] =>
  text
    .toLowerCase()
    .slice(0, 400)
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '')
    .map(stem);

/** How well a calculation answers the words: words of the title count most, then those it is found by, then its topic and inputs. */
function score(calculation: Calculation, asked: readonly string[]): number {
  const places: [number, string[]][] = [
    [4, wordsOf(calculation.title)],
    [3, wordsOf(calculation.foundBy.join(' '))],
    [1, wordsOf(`${topicTitle(calculation.topic)} ${calculation.inputs.map(({ label }) => label).join(' ')}`)],
  ];
  let sum = 0;
  for (const word of asked) {
    const best = Math.max(0, ...places.map(([worth, words]) => worth * Math.max(0, ...words.map((each) => fit(each, word)))));
    if (best === 0) sum -= 1;
    sum += best;
  }
  return sum;
}

const fit = (word: string, asked: string): number =>
  word === asked ? 1 : asked.length > 2 && word.startsWith(asked) ? 0.7 : isSlip(word, asked) ? 0.5 : 0;

/** Whether a word was meant and one key was missed, struck twice or struck wrong, or two were struck in the wrong order. */
function isSlip(word: string, asked: string): boolean {
  if (Math.min(word.length, asked.length) < 4 || Math.abs(word.length - asked.length) > 1) return false;
  let from = 0;
  while (from < word.length && word[from] === asked[from]) from += 1;
  const [meant, typed] = [word.slice(from), asked.slice(from)];
  const swapped = meant.length > 1 && meant[0] === typed[1] && meant[1] === typed[0] && meant.slice(2) === typed.slice(2);
  return swapped || meant.slice(1) === typed.slice(1) || meant === typed.slice(1) || meant.slice(1) === typed;
}

/** Those that have a page of their own, by how well they fit; all of them, in the order of their topics, when nothing is asked. */
export function searchCalculations(calculations: readonly Calculation[], asked: string): Calculation[] {
  const paged = calculations.filter(({ foundBy }) => foundBy.length > 0);
  const words = wordsOf(asked)
    .filter((word) => !idle.has(word))
    .slice(0, 12);
  if (words.length === 0) return asked.trim() === '' ? paged : [];
  return paged
    .map((calculation, place) => ({ calculation, place, score: score(calculation, words) }))
    .filter((found) => found.score > 0)
    .sort((a, b) => b.score - a.score || a.place - b.place)
    .map(({ calculation }) => calculation);
}
