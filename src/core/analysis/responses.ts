/** Answers of candidates to questions, as a table gives them. */

export interface AskedQuestion {
  /** The name of its column. */
  id: string;
  /** Null where the table says only right or wrong. */
  key: { right: string; options: readonly string[] } | null;
}

export interface Responses {
  questions: readonly AskedQuestion[];
  /** By candidate, in the order of the questions: the option that was chosen, or 0 or 1 for a question without a key; null for a blank. */
  rows: readonly (readonly (string | null)[])[];
}

/** Marks by question and, within it, by candidate: 1 for right, 0 for anything else, a blank among it. */
export const marksOf = ({ questions, rows }: Responses): number[][] =>
  questions.map(({ key }, place) => rows.map((row) => (row[place] === (key === null ? '1' : key.right) ? 1 : 0)));

/** Sums by candidate. */
export function totalsOf(marks: readonly (readonly number[])[], candidates: number): number[] {
  const totals = Array.from({ length: candidates }, () => 0);
  for (const column of marks) column.forEach((mark, place) => (totals[place] = (totals[place] as number) + mark));
  return totals;
}
