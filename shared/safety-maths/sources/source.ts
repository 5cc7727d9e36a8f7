/** Where each calculation stands. `basis` says how the project knows it. */
export interface MathsSource {
  readonly id: string;
  readonly title: string;
  readonly publisher: string;
  readonly year: number | null;
  /** Clause, table or edition. */
  readonly where: string;
  /** read: the text was read; read-secondary: read where others quote it; computed: worked out here from the formula; common-practice: no published source. */
  readonly basis: 'read' | 'read-secondary' | 'computed' | 'common-practice' | 'memory';
}

/** One source, as a line of a table. */
export const source = (
  id: string,
  title: string,
  publisher: string,
  year: number | null,
  where: string,
  basis: MathsSource['basis'],
): MathsSource => ({
  id,
  title,
  publisher,
  year,
  where,
  basis,
});
