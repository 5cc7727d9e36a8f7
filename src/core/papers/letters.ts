import { counted } from '../words.js';

/** The letters of an answer sheet, typed by a tutor: `ABCDA-BC`. */

export interface LetterFault {
  /** From 1 on. */
  question: number;
  letter: string;
  /** The letters it has. */
  letters: readonly string[];
}

export type LettersRead = { ok: true; choices: (string | null)[] } | { ok: false; why: string; faults: LetterFault[] };

/** A question that was left out. */
const blanks = /[-._0]/;

/**
 * Capitals or small letters, with spaces or without; `-` stands for a blank.
 * @param letters of each question, in the order of the version
 */
export function readLetters(typed: string, letters: readonly (readonly string[])[]): LettersRead {
  const plain = [...typed.replace(/[\s,;]+/g, '')];
  const strange = plain.find((letter) => !/[A-Za-z]/.test(letter) && !blanks.test(letter));
  if (strange !== undefined) return { ok: false, why: `“${strange}” is no letter of an answer. Type - for a blank.`, faults: [] };
  const given = plain.map((letter) => letter.toUpperCase());
  if (given.length !== letters.length) {
    const what = given.length < letters.length ? 'missing' : 'too many';
    const [answers, questions] = [counted(given.length, 'answer'), counted(letters.length, 'question')];
    const count = Math.abs(letters.length - given.length);
    return { ok: false, why: `${answers} for ${questions}: ${count} ${what}. Type - for a blank.`, faults: [] };
  }
  const choices = given.map((letter) => (blanks.test(letter) ? null : letter));
  const faults = choices.flatMap((letter, index) => {
    const own = letters[index] ?? [];
    return letter === null || own.includes(letter) ? [] : [{ question: index + 1, letter, letters: own }];
  });
  return faults.length === 0 ? { ok: true, choices } : { ok: false, why: faultWords(faults), faults };
}

function faultWords(faults: readonly LetterFault[]): string {
  const said = faults
    .slice(0, 3)
    .map(({ question, letter, letters }) => `question ${question} has no ${letter} (A to ${letters.at(-1) ?? 'A'})`);
  const more = faults.length > 3 ? ` and ${faults.length - 3} more` : '';
  return `${said.join('; ')}${more}.`.replace(/^q/, 'Q');
}
