import { RungwiseError } from './errors.js';
import { phraseWords } from './return-phrase-words.js';

export { phraseWords };

/** Words in a return phrase. */
export const phraseLength = 7;

/** What a phrase is worth against guessing, in bits: seven free choices among 1,024 words, ten bits each. */
export const phraseBits = 70;

/** The longest text that is read, in UTF-16 units (as a form field counts). Seven numbered words need about 80. */
export const longestPhraseText = 400;

export type PhraseReading =
  /** `canonical` is the words in small letters with single spaces between: the form that is hashed. */
  { understood: true; words: string[]; canonical: string } | { understood: false; message: string };

/**
 * A fresh return phrase: seven words, each chosen freely from all, so one may come twice.
 *
 * @param random whole numbers from 0 to `maxExclusive` - 1, all equally likely and not to be foretold (`crypto.randomInt`).
 * @throws RungwiseError `internal` when `random` gives anything else: a weak phrase must not be handed out.
 */
export function makePhrase(random: (maxExclusive: number) => number): string[] {
  return Array.from({ length: phraseLength }, () => {
    const place = random(phraseWords.length);
    const word = phraseWords[place];
    if (word === undefined)
      throw new RungwiseError('internal', `makePhrase: chance gave ${place}, not a whole number below ${phraseWords.length}`);
    return word;
  });
}

/**
 * Reads a return phrase as people type it: any case, accents or not, numbered or not, with whatever stands between the words. Of each
 * word its first four letters suffice, and one slip (a letter wrong, missing, too many, or two neighbours exchanged) is mended where
 * exactly one word of the list is so near. A letter that stands alone is taken for a slip of the thumb and left out.
 *
 * @returns the words, or a message for the person who typed: which words are not in the list, how many were read. Never throws.
 */
export function readPhrase(text: string): PhraseReading {
  if (text.length > longestPhraseText) {
    return {
      understood: false,
      message: `That is too long to be a return phrase: up to ${longestPhraseText} characters are read. Type only the seven words.`,
    };
  }
  const readings = piecesOf(text).map(readWord);
  const words = readings.flatMap((reading) => reading.word ?? []);
  if (words.length === phraseLength && readings.length === phraseLength) return { understood: true, words, canonical: words.join(' ') };
  return { understood: false, message: [...unreadMessages(readings), ...countMessage(readings.length)].join(' ') };
}

interface WordReading {
  piece: string;
  word: string | undefined;
  /** Words of the list that are one slip away, where that is more than one. */
  near: string[];
}

const lettersThatSuffice = 4;
const wordByStart = new Map(phraseWords.map((word) => [word.slice(0, lettersThatSuffice), word]));

function readWord(piece: string): WordReading {
  const begun = wordByStart.get(piece.slice(0, lettersThatSuffice));
  // Whole, or broken off after the fourth letter.
  if (begun?.startsWith(piece)) return { piece, word: begun, near: [] };
  const near = wordsOneSlipAway(piece);
  if (near.length > 0) return near.length === 1 ? { piece, word: near[0], near: [] } : { piece, word: undefined, near };
  // A right beginning and a muddled end: no other word of the list begins so. Much longer, it is rather two words run together.
  const muddled = begun !== undefined && begun.length > lettersThatSuffice && piece.length <= begun.length + 2;
  return { piece, word: muddled ? begun : undefined, near: [] };
}

const longestWord = Math.max(...phraseWords.map((word) => word.length));

/** Every word under itself and under what is left of it when one letter is missing. Two texts one slip apart share such a remnant. */
const wordsByRemnant = new Map<string, string[]>();
for (const word of phraseWords) {
  for (const remnant of remnantsOf(word)) wordsByRemnant.set(remnant, [...(wordsByRemnant.get(remnant) ?? []), word]);
}

function remnantsOf(text: string): Set<string> {
  return new Set([text, ...Array.from({ length: text.length }, (_, i) => text.slice(0, i) + text.slice(i + 1))]);
}

/** Words of the list one slip away, in alphabetical order. By the table, so that 400 characters cost no search of the whole list. */
function wordsOneSlipAway(piece: string): string[] {
  if (piece.length > longestWord + 1) return [];
  const sharing = new Set([...remnantsOf(piece)].flatMap((remnant) => wordsByRemnant.get(remnant) ?? []));
  return [...sharing].filter((word) => isOneSlipApart(piece, word)).sort();
}

/**
 * Whether two different texts are one edit apart in the restricted Damerau-Levenshtein sense. Once the common beginning and end are set
 * aside, what is left shows which edit it was; so this takes time in proportion to the length.
 */
function isOneSlipApart(a: string, b: string): boolean {
  if (Math.abs(a.length - b.length) > 1) return false;
  const shorter = Math.min(a.length, b.length);
  let start = 0;
  while (start < shorter && a[start] === b[start]) start += 1;
  let end = 0;
  while (end < shorter - start && a[a.length - 1 - end] === b[b.length - 1 - end]) end += 1;
  const left = a.slice(start, a.length - end);
  const right = b.slice(start, b.length - end);
  if (left.length <= 1 && right.length <= 1) return true;
  return left.length === 2 && right.length === 2 && left[0] === right[1] && left[1] === right[0];
}

/** Letters that Unicode does not take apart, but that a foreign keyboard or its corrections may put for plain ones. */
const plainLetters: Readonly<Record<string, string>> = { ß: 'ss', æ: 'ae', œ: 'oe', ø: 'o', đ: 'd', ł: 'l', ı: 'i' };

/** The runs of letters in a text, in small letters without accents. Everything else parts them. */
function piecesOf(text: string): string[] {
  const plain = text
    .replace(/\u200b/g, ' ') // A zero-width space marks the end of a word; the other invisible signs stand within words.
    .normalize('NFKD')
    .replace(/[\p{M}\p{Cf}\p{Lm}'’‘`]/gu, '')
    .toLowerCase()
    .replace(/[ßæœøđłı]/g, (letter) => plainLetters[letter] ?? letter);
  const pieces = plain.match(/\p{L}+(?:\p{Nd}+\p{L}+)*/gu) ?? [];
  return pieces.flatMap(partAtDigits).filter((piece) => piece.length > 1);
}

/** A digit between letters is either a slip ("app1e") or the number of the next word with no space before it ("apple2banana"). */
function partAtDigits(piece: string): string[] {
  const parts = piece.split(/\p{Nd}+/u);
  return parts.every((part) => readWord(part).word !== undefined) ? parts : [piece];
}

const mostNamed = 3;
const longestShown = 20;

function unreadMessages(readings: WordReading[]): string[] {
  const unread = readings.flatMap((reading, index) => (reading.word === undefined ? [{ ...reading, position: index + 1 }] : []));
  if (unread.length === 0) return [];
  const named = unread.slice(0, mostNamed).map(({ piece, near, position }) => {
    const could = near.length === 0 ? '' : `; it could be ${near.slice(0, mostNamed).map(quoted).join(' or ')}`;
    return `Word ${position}, ${quoted(piece)}, is not in the list${could}.`;
  });
  const more = unread.length - named.length;
  if (more > 0) named.push(more === 1 ? 'One more is not in it either.' : `${more} more are not in it either.`);
  return [...named, 'Look at your phrase again; the first four letters of a word are enough.'];
}

function countMessage(count: number): string[] {
  if (count === phraseLength) return [];
  if (count === 0) return ['No word was read. Type the seven words of your return phrase.'];
  return [`${count === 1 ? '1 word was' : `${count} words were`} read, and seven are needed.`];
}

function quoted(piece: string): string {
  const letters = Array.from(piece);
  return `“${letters.slice(0, longestShown).join('')}${letters.length > longestShown ? '…' : ''}”`;
}
