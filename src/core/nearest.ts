/** The word of a list that differs least from a misspelt one, by two letters at most; null when none comes near. */
export function nearest(word: string, words: Iterable<string>): string | null {
  let best: string | null = null;
  let least = Math.min(2, Math.floor(word.length / 2)) + 1;
  for (const candidate of words) {
    if (Math.abs(candidate.length - word.length) >= least || word.length > 60) continue;
    const apart = distance(word, candidate);
    if (apart < least) [best, least] = [candidate, apart];
  }
  return best;
}

/** Levenshtein's distance: the fewest letters to add, leave out or change (V. I. Levenshtein, 1966), with case put aside. */
function distance(a: string, b: string): number {
  const [from, to] = [a.toLowerCase(), b.toLowerCase()];
  let above = Array.from({ length: to.length + 1 }, (_, column) => column);
  for (let row = 1; row <= from.length; row += 1) {
    const line = [row];
    for (let column = 1; column <= to.length; column += 1) {
      const changed = (above[column - 1] ?? 0) + (from[row - 1] === to[column - 1] ? 0 : 1);
      line.push(Math.min(changed, (above[column] ?? 0) + 1, (line[column - 1] ?? 0) + 1));
    }
    above = line;
  }
  return above[to.length] ?? 0;
}
