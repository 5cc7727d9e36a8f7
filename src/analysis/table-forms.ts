import { z } from 'zod';
import { RungwiseError } from '../core/errors.js';
import { decodeFile } from '../platform/csv-table.js';
import { mostTableBytes } from './table-service.js';

/** What the form for a table may hold. */

export const tableFields = { texts: ['answers', 'key'], files: ['file', 'keyFile'] };

/** Two texts and two files within their limits, and what a text may grow to on its way. */
export const tableBodyLimit = 8 * mostTableBytes;

const text = z.string().max(tableBodyLimit).default('');
/** A form without a file may send the field as text. */
const file = z.instanceof(Uint8Array).optional().catch(undefined);
const tableForm = z.object({ answers: text, key: text, file, keyFile: file });

export interface TableTyped {
  answers: string;
  key: string;
}

/** Both tables as text; a file is taken in place of what was typed. */
export function tableTyped(body: unknown): TableTyped {
  const form = tableForm.safeParse(body);
  if (!form.success) throw new RungwiseError('form-not-understood', 'a table that cannot be read');
  const { answers, key, file: sent, keyFile } = form.data;
  return { answers: sent === undefined ? answers : decodeFile(sent), key: keyFile === undefined ? key : decodeFile(keyFile) };
}
