import { CalculationInputError } from '../inputs.js';
import { put } from '../working.js';

/** One size of flex: area of a conductor in mm², greatest current in A. */
export interface Flex {
  readonly area: number;
  readonly current: number;
}

/** Flexes from thin to thick. Source: IET Code of Practice, table VII.1, as testers quote it. */
export const flexes: readonly Flex[] = [
  { area: 0.5, current: 3 },
  { area: 0.75, current: 6 },
  { area: 1, current: 10 },
  { area: 1.25, current: 13 },
  { area: 1.5, current: 15 },
];

/** The thinnest flex rated at least as high as a current in A; null when the thickest is too thin. */
export const thinnestFor = (current: number): Flex | null => flexes.find((flex) => flex.current >= current) ?? null;

/** The row of a table by the area in mm²; throws CalculationInputError, naming the input, when there is no such row. */
export function rowOf<R extends { readonly area: number }>(table: readonly R[], area: number, input: string): R {
  const row = table.find((one) => one.area === area);
  if (row !== undefined) return row;
  const areas = table.map((one) => put(one.area, 'mm²')).join(', ');
  throw new CalculationInputError(input, `${put(area, 'mm²')} does not stand in the table; give one of: ${areas}`);
}
