import { formatNumber, formatQuantity, roundSignificant } from '../format.js';
import type { Reading } from './parse.js';

/** All the figures typed, up to 12; six where the number goes on for ever, as a third does. */
const figures = (value: number): { significant: number } => ({ significant: roundSignificant(value, 12) === value ? 12 : 6 });

/** What the page shows beside the field: "read as 0.5 kW = 500 W", or the message that says what to do. */
export function describeReading(reading: Reading): string {
  if (!reading.understood) return reading.message;
  const asked = formatQuantity(reading.value, reading.unit, figures(reading.value));
  const { number, unit } = reading.typed;
  if (unit === null) return `read as ${asked}`;
  const typed = unit === '' ? formatNumber(number, figures(number)) : formatQuantity(number, unit, figures(number));
  return typed === asked ? `read as ${asked}` : `read as ${typed} = ${asked}`;
}
