import { plainText, wordsOf } from './words.js';

const pairs = (
  'increase:decrease increases:decreases rises:falls rise:fall more:less higher:lower series:parallel live:neutral open:closed on:off up:down ' +
  'before:after larger:smaller bigger:smaller longer:shorter faster:slower hot:cold wet:dry left:right above:below inside:outside ' +
  'positive:negative with:without near:far thick:thin first:last'
)
  .split(' ')
  .map((pair) => pair.split(':') as [string, string]);
const opposites = new Map([...pairs, ...pairs.map(([a, b]) => [b, a] as [string, string])]);

/** The same words in the same places but for one that is the other's opposite. */
export function areOpposite(a: string, b: string): boolean {
  const [left, right] = [wordsOf(a), wordsOf(b)];
  if (left.length !== right.length || plainText(a) === plainText(b)) return false;
  const different = left.flatMap((word, index) => (word === right[index] ? [] : [[word, right[index]] as const]));
  return different.length === 1 && different.every(([x, y]) => y !== undefined && (opposites.get(x) === y || opposites.get(y) === x));
}
