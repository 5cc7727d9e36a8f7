import { z } from 'zod';
import { RungwiseError } from '../core/errors.js';
import { mostLetters } from '../core/papers/sheet.js';
import type { SavedChoice } from './sitting-store.js';

/** What the forms of a candidate's papers may hold. */

export const paperName = z.string().regex(/^[a-z0-9-]{1,60}\/[a-z0-9-]{1,60}$/);
export const sittingParams = z.object({ sitting: z.uuid() });
export const paperParams = z.object({ paper: z.uuid() });
export const placeParams = z.object({
  sitting: z.uuid(),
  place: z
    .string()
    .regex(/^[1-9]\d{0,2}$/)
    .transform(Number),
});

/** Per cent more time. */
export const extraTimes = [0, 25, 50, 100] as const;
export const extraTime = z.enum(['0', '25', '50', '100']).transform(Number);

export const ownPaperForm = z.object({ sitting: z.uuid(), paper: paperName, extra: extraTime });
export const beginForm = z.object({ pages: z.enum(['one', 'all']) });

const letter = z.string().regex(new RegExp(`^[A-${String.fromCharCode(64 + mostLetters)}]?$`));
const place = /^c(\d{1,3})$/;

export interface SavedForm {
  /** Only what the page changed: a page that is old in another tab takes nothing back. */
  changed: SavedChoice[];
  /** Where to go when it is saved. */
  go: string;
}

const anyFields = z.record(z.string().max(20), z.string().max(200));

/**
 * Fields by question: `c7` the letter chosen, `w7` the letter that the page was loaded with, `a7` to be looked at again, `b7` that as loaded.
 * @throws RungwiseError for anything that our pages do not send
 */
export function readSaved(body: unknown): SavedForm {
  const fields = anyFields.safeParse(body);
  if (!fields.success) throw new RungwiseError('form-not-understood', 'an answer sheet that cannot be read');
  const { data } = fields;
  const changed = Object.keys(data).flatMap((name) => {
    // A question without a choice sends nothing but what it was loaded with.
    const position = Number(/^w(\d{1,3})$/.exec(name)?.[1] ?? Number.NaN);
    if (Number.isNaN(position)) return [];
    const [choice, was] = [letter.safeParse(data[`c${position}`] ?? ''), letter.safeParse(data[name] ?? '')];
    if (!choice.success || !was.success) throw new RungwiseError('form-not-understood', `question ${position}: no such letter`);
    const [again, before] = [data[`a${position}`] === 'on', data[`b${position}`] === 'on'];
    return choice.data === was.data && again === before ? [] : [{ position, choice: choice.data === '' ? null : choice.data, again }];
  });
  if (Object.keys(data).some((name) => place.test(name) && data[name.replace('c', 'w')] === undefined))
    throw new RungwiseError('form-not-understood', 'a choice without its question');
  return { changed, go: data['go'] ?? '' };
}
