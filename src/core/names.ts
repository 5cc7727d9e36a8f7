import { z } from 'zod';

/** Names as forms take them: of people, of classes. */

// Control characters, line breaks and marks that turn the direction of writing: none of them belongs in a name.
const unfit = /[\p{Cc}\p{Cf}\p{Co}\p{Cn}\u2028\u2029]/u;

/** Whether a name holds a sign that cannot be shown. */
export const isUnfit = (name: string): boolean => unfit.test(name);

/** A name with spaces made plain, as it is kept. */
export const tidyName = (text: string): string => text.normalize('NFC').trim().replace(/\s+/g, ' ');

/** A name of up to `most` letters; `empty` and `long` are what somebody reads who left it out or wrote too much. */
export const nameText = (most: number, empty: string, long: string) =>
  z
    .string({ error: empty })
    .transform(tidyName)
    .refine((text) => text.length > 0, empty)
    .refine((text) => [...text].length <= most, long)
    .refine((text) => !isUnfit(text), 'The name holds a sign that cannot be shown. Use letters, digits and spaces.');

/** Whether two names look like one to somebody who calls them out. */
export const sameName = (one: string, other: string): boolean => one.toLowerCase() === other.toLowerCase();
