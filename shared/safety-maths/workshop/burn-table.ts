/** Time to a serious burn at one temperature: °C and s; null where the chart sets no such bound. */
export interface BurnRow {
  readonly temperature: number;
  readonly least: number | null;
  readonly most: number | null;
}

/** From warm to hot. "Over" 300 s has no most, "under" 5 s no least. Source: chart of eight rows, whose own origin is not known. */
export const burnRows: readonly BurnRow[] = [
  { temperature: 49, least: 300, most: null },
  { temperature: 52, least: 90, most: 120 },
  { temperature: 55, least: 30, most: 30 },
  { temperature: 57, least: 10, most: 10 },
  { temperature: 60, least: null, most: 5 },
  { temperature: 63, least: null, most: 3 },
  { temperature: 66, least: 1.5, most: 1.5 },
  { temperature: 68, least: 1, most: 1 },
];

/**
 * The bounds at a temperature. Between two rows the hotter gives the least time and the cooler the most; above the last row only the
 * last row's time stands, as the most. Temperature in °C, not below the first row.
 */
export function burnTimeAt(temperature: number): { least: number | null; most: number | null } {
  const row = burnRows.find((one) => one.temperature === temperature);
  if (row !== undefined) return row;
  const hotter = burnRows.find((one) => one.temperature > temperature);
  const cooler = burnRows.filter((one) => one.temperature < temperature).at(-1);
  return { least: hotter?.least ?? null, most: cooler?.most ?? null };
}

/** Temperature in °C above which skin burns in a contact of so many s. */
export interface TouchRow {
  readonly time: number;
  readonly temperature: number;
  readonly where: string;
}

/** From short to long. Source: ASTM C1055 (5 s); EN ISO 13732-1, table 1 (1 min, 10 min and 8 h). */
export const touchRows: readonly TouchRow[] = [
  { time: 5, temperature: 60, where: 'ASTM C1055' },
  { time: 60, temperature: 51, where: 'EN ISO 13732-1' },
  { time: 600, temperature: 48, where: 'EN ISO 13732-1' },
  { time: 28_800, temperature: 43, where: 'EN ISO 13732-1' },
];
