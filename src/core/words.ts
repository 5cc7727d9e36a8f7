import { z } from 'zod';

/** Words that many pages use. */

/** `1 question`, `3 questions`. */
export const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;

/** The beginning of a text on one line: enough to know it by. */
export function shortened(text: string): string {
  const line = text.replace(/\s+/g, ' ');
  return line.length <= 120 ? line : `${line.slice(0, 117).trimEnd()}…`;
}

/** What somebody looks for, from an address: 100 letters at most; whatever cannot be read counts as nothing. */
export const searchText = z
  .string()
  .transform((text) =>
    text
      .normalize('NFC')
      .replace(/\p{Cc}/gu, ' ')
      .trim()
      .slice(0, 100),
  )
  .catch('');

/** A text as SQL's LIKE takes it, anywhere in another. */
export const anywhere = (text: string): string => `%${text.replace(/[\\%_]/g, String.raw`\$&`)}%`;
