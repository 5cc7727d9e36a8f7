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

/** 1,234,567 as `1.2 MB`: decimal, as disks are sold. */
export function bytesText(bytes: number): string {
  const units = ['bytes', 'kB', 'MB', 'GB', 'TB'];
  let value = bytes;
  let unit = 0;
  while (value >= 1000 && unit < units.length - 1) {
    value /= 1000;
    unit += 1;
  }
  return `${unit === 0 || value >= 100 ? Math.round(value) : value.toFixed(1)} ${units[unit]}`;
}
