import { requirePermission, type Person } from '../accounts/index.js';
import { analyse, type Analysis } from '../core/analysis/analyse.js';
import type { Clock } from '../platform/clock.js';
import { readAnswers, type AnswerTables, type PlacedFault } from './table-csv.js';

/** Figures of a table that a tutor brings. Nothing of it is kept. */

/** Of one of the two tables. */
export const mostTableBytes = 256 * 1024;

/** Of what is sent to the page. */
export const tableLimits = {
  table: { rows: 5000, columns: 251, rowSize: 32_000, tooMany: 'Take a part of them, or use the command: npx rungwise analyse.' },
  bytes: mostTableBytes,
  cells: 250_000,
};

export interface TableView {
  analysis: Analysis;
  now: Date;
}

export type TableService = ReturnType<typeof tableService>;

export function tableService({ clock }: { clock: Clock }) {
  function figures(person: Person, tables: AnswerTables): TableView | { faults: PlacedFault[] } {
    requirePermission(person, 'analyse-questions');
    const read = readAnswers(tables, tableLimits);
    if ('faults' in read) return read;
    if (read.responses.rows.length === 0)
      return { faults: [{ table: 'answers', line: null, why: 'There is a header and no row below it.' }] };
    return { analysis: analyse(read.responses), now: clock.now() };
  }
  return { figures };
}
