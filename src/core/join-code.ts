import { RungwiseError } from './errors.js';

/**
 * The code by which a candidate joins a class: eight signs, read aloud, typed from a slip or scanned. Nothing in it is taken for
 * something else: no 0 and O, no 1, I and L.
 */
export const codeSigns = '23456789ABCDEFGHJKMNPQRSTUVWXYZ';
export const codeLength = 8;

/** The longest text that is read, in UTF-16 units: a code, or the whole address of a page that ends in one. */
export const longestCodeText = 200;

export type CodeReading = { understood: true; code: string } | { understood: false; message: string };

/**
 * A fresh code. One guess hits one of 100 codes that are open with a chance of 100 / 31^8, about 1 in 8.5 thousand million.
 *
 * @param random whole numbers from 0 to `maxExclusive` - 1, all equally likely and not to be foretold (`crypto.randomInt`).
 * @throws RungwiseError `internal` when `random` gives anything else: a weak code must not be handed out.
 */
export function makeCode(random: (maxExclusive: number) => number): string {
  return Array.from({ length: codeLength }, () => {
    const place = random(codeSigns.length);
    const sign = codeSigns[place];
    if (sign === undefined)
      throw new RungwiseError('internal', `makeCode: chance gave ${place}, not a whole number below ${codeSigns.length}`);
    return sign;
  }).join('');
}

/** In fours, as it is printed and read aloud: `K7QW 3MXP`. */
export const inFours = (code: string): string => code.replace(/(.{4})(?=.)/g, '$1 ');

/**
 * Reads a code as people type it: small letters, spaces and hyphens anywhere, or the whole address from a slip.
 * @returns the code in capitals, or a message for the person who typed. Never throws.
 */
export function readCode(text: string): CodeReading {
  if (text.length > longestCodeText) return refused('That is too long to be a code. Type only its eight letters and digits.');
  const signs = Array.from(
    text
      .normalize('NFKC')
      .replace(/^.*\/join\//is, '')
      .toUpperCase()
      .replace(/[\s\p{Pd}\p{Cf}.,_/]/gu, ''),
  );
  if (signs.length === 0) return refused('Type the code from your tutor: eight letters and digits, such as K7QW 3MXP.');
  const strange = [...new Set(signs.filter((sign) => !codeSigns.includes(sign)))];
  if (strange.length > 0) return refused(strangeWords(strange));
  if (signs.length !== codeLength) {
    const read = signs.length === 1 ? '1 letter or digit was' : `${signs.length} letters and digits were`;
    return refused(`${read} read, and a code has eight.`);
  }
  return { understood: true, code: signs.join('') };
}

const refused = (message: string): CodeReading => ({ understood: false, message });

const mostNamed = 3;

function strangeWords(strange: readonly string[]): string {
  const named = strange.slice(0, mostNamed).map((sign) => `“${sign}”`);
  const which = `${named.join(', ')}${strange.length > mostNamed ? ' and other signs are' : named.length === 1 ? ' is' : ' are'} in no code.`;
  const alike = strange.some((sign) => '0O1IL'.includes(sign)) ? ' There is no 0, O, 1, I or L in one, since they look alike.' : '';
  return `${which}${alike} Look again, or ask your tutor to read it to you.`;
}
