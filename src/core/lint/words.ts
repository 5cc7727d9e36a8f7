/** Words of a text, as the rules of the lint compare them. */

const stopWords = new Set(
  (
    'a an the and or but if so as at by for from in into of off on onto out over than that then there these this those to up with without ' +
    'is are was were be been being am do does did has have had having can could will would shall should may might must ' +
    'he she it they we you i his her its their our your him them us me my one ones who whom whose which what when where why how ' +
    'not no nor only just also very too more most much many some any each every both either neither other another same such own ' +
    'about after again all almost along already always because before between during few first here however last less ' +
    'now once onto per since still through under until upon via while within yet'
  ).split(' '),
);

/** Lower case, plain quotes and dashes, single spaces, no stop at the end. Linear in the text. */
export function plainText(text: string): string {
  return text
    .normalize('NFC')
    .toLowerCase()
    .replace(/[‘’]/g, "'")
    .replace(/[“”]/g, '"')
    .replace(/[–—]/g, '-')
    .replace(/\s+/g, ' ')
    .replace(/[.!?]$/, '')
    .trim();
}

export const wordsOf = (text: string): string[] => plainText(text).match(/[\p{L}\p{N}]+(?:['.-][\p{L}\p{N}]+)*/gu) ?? [];

/** Plurals and the commonest endings taken off, so that "fuses" and "fuse", "charging" and "charge" meet. No more than that. */
export function stemOf(word: string): string {
  let stem = word.replace(/'s$/, '');
  if (stem.length > 4) stem = stem.replace(/ies$/, 'y').replace(/(?<=[sxz]|ch|sh)es$/, '');
  if (stem.length > 3) stem = stem.replace(/(?<![su'])s$/, '');
  if (stem.length > 5) stem = stem.replace(/(?:ing|ed)$/, '');
  return stem.replace(/e$/, '');
}

/** The words that carry the sense, each once. */
export const contentStems = (text: string): Set<string> =>
  new Set(
    wordsOf(text)
      .filter((word) => word.length > 1 && !stopWords.has(word))
      .map(stemOf),
  );

export const lettersIn = (text: string): number => text.replace(/\s/g, '').length;

/** Sentences, by their ends; a point inside a number or an abbreviation such as "a.c." ends none. */
export const sentencesOf = (text: string): string[] =>
  text
    .split(/(?<=[.!?])\s+(?=[\p{Lu}\p{N}"“‘])/u)
    .map((sentence) => sentence.trim())
    .filter((sentence) => sentence !== '');

/** Whether a text holds one of these words as a word. */
export function holdsWord(text: string, list: ReadonlySet<string>): boolean {
  return wordsOf(text).some((word) => list.has(word));
}
