import { z } from 'zod';
import { rowNumber } from '../core/address-number.js';
import { keepChoices } from '../core/retention.js';
import { searchText } from '../core/words.js';

/** What the addresses and forms of people's data carry. */

export const personParams = z.object({ person: rowNumber });

/** A part of the whole, from 1 on; anything else is the first. */
export const wholeQuery = z.object({
  part: z
    .string()
    .regex(/^[1-9]\d{0,2}$/)
    .transform(Number)
    .catch(1),
});

export const peopleQuery = z.object({ text: searchText, said: z.literal('removed').optional().catch(undefined) });

export const sureForm = z.object({ sure: z.literal('on') });

export const keepingForm = z.object({
  contact: z
    .string()
    .max(160)
    .transform((text) =>
      text
        .normalize('NFC')
        .replace(/[\s\p{Cc}]+/gu, ' ')
        .trim(),
    ),
  months: z
    .string()
    .regex(/^\d{1,2}$/)
    .transform(Number)
    .refine((months) => (keepChoices as readonly number[]).includes(months)),
});
