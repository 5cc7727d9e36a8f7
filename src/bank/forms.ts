import { z } from 'zod';
import { kindNames } from '../core/questions/schema.js';
import { regionSchema } from '../core/syllabus.js';
import { searchText } from '../core/words.js';
import type { BankSearch } from './service.js';

/** What the addresses and forms of the bank may hold. An address that says something else is read as if it did not. */

const whole = (most: number) => z.coerce.number().int().min(1).max(most);
const kinds = Object.keys(kindNames) as [string, ...string[]];

const searchForm = z.object({
  where: z
    .string()
    .regex(/^[to]\d{1,9}$/)
    .nullable()
    .catch(null),
  kind: z.enum(kinds).nullable().catch(null),
  text: searchText,
  retired: z.literal('yes').nullable().catch(null),
  page: whole(1000).catch(1),
});

export function readSearch(query: unknown): BankSearch {
  const { where, kind, text, retired, page } = searchForm.parse(query ?? {});
  const id = where === null ? null : Number(where.slice(1));
  return {
    topicId: where?.startsWith('t') === true ? id : null,
    objectiveId: where?.startsWith('o') === true ? id : null,
    kind,
    text,
    retired: retired === 'yes',
    page,
  };
}

export const questionParams = z.object({ question: whole(2 ** 31 - 1) });
export const queryParams = z.object({ query: z.uuid() });

export const atForm = z.object({
  revision: whole(2 ** 31 - 1)
    .nullable()
    .catch(null),
  seed: whole(2 ** 31 - 1)
    .nullable()
    .catch(null),
  region: regionSchema.nullable().catch(null),
});

/** A text of some lines; control characters but line breaks and tabs are no part of one. */
const words = (empty: string) =>
  z
    .string({ error: empty })
    .transform((text) => text.normalize('NFC').replace(/\r\n?/g, '\n').trim())
    .refine((text) => text.length > 0, empty)
    .refine((text) => text.length <= 2000, 'That is longer than 2,000 letters. Shorten it; nothing you wrote is lost.')
    .refine((text) => !/[^\P{Cc}\n\t]/u.test(text), 'It holds a sign that cannot be kept. Write it with letters, digits and spaces.');

export const aboutForm = z.object({
  question: whole(2 ** 31 - 1),
  revision: whole(2 ** 31 - 1),
  /** The numbers or order that the person had before them. */
  seed: whole(2 ** 31 - 1)
    .nullable()
    .catch(null),
  region: regionSchema.nullable().catch(null),
});
export const raiseForm = aboutForm.extend({ query: z.uuid() });
export const raiseText = z.object({ body: words('Write what seems wrong: a few words are enough.') });
export const answerForm = z.object({
  answer: words('Write an answer first.'),
  before: z.iso.datetime().nullable().catch(null),
});
