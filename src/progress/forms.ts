import { z } from 'zod';
import { searchText } from '../core/words.js';
import type { AnswerSearch } from './service.js';

/** What the address of the answers may carry. Whatever cannot be understood counts as not said. */
const searchForm = z.object({
  text: searchText,
  show: z.enum(['all', 'wrong', 'sure-wrong']).catch('all'),
  page: z.coerce.number().int().min(1).max(100_000).catch(1),
});

export const readAnswerSearch = (query: unknown): AnswerSearch => searchForm.parse(query ?? {});
