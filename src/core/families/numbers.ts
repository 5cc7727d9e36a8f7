import type { Rounding } from './schema.js';

/**
 * Decimal arithmetic on doubles, for figures that people read. Everything is rounded as it is printed in decimal,
 * halves away from zero as taught in school (2.125 to two places is 2.13), never by the binary that lies behind it.
 */

/** The nearest number with twelve significant figures: drops the noise of double precision, and any last-digit difference between machines. */
export function tidy(value: number): number {
  return Number.isFinite(value) ? Number(value.toPrecision(12)) : value;
}

/** value × 10^places, exactly as written in decimal: 0.145 by 2 is 14.5, where 0.145 * 100 is 14.499999999999998. */
function shift(value: number, places: number): number {
  const [mantissa, exponent] = String(value).split('e');
  return Number(`${mantissa}e${Number(exponent ?? 0) + places}`);
}

function decimals(value: number, places: number, mode: Rounding['mode']): number {
  const scaled = shift(tidy(Math.abs(value)), places);
  // "Up" means away from zero here; answers are positive, so that is also the larger figure.
  const whole = mode === 'up' ? Math.ceil(scaled) : mode === 'down' ? Math.floor(scaled) : Math.round(scaled);
  return Math.sign(value) * shift(whole, -places);
}

/** Rounded to decimals (`dp`) or significant figures (`sf`), nearest, up or down. */
export function roundTo(value: number, round: Rounding): number {
  if (!Number.isFinite(value) || value === 0) return value;
  if (round.dp !== undefined) return decimals(value, round.dp, round.mode);
  const magnitude = Number(tidy(value).toExponential().split('e')[1]);
  return decimals(value, (round.sf ?? 3) - 1 - magnitude, round.mode);
}

/** As `{name}` prints: four decimals at most, no trailing zeros. */
export function plain(value: number): string {
  return String(decimals(value, 4, 'nearest'));
}

/** As `{name|2}` prints: just so many decimals. */
export function fixed(value: number, places: number): string {
  return decimals(value, places, 'nearest').toFixed(places);
}

function placesOf(value: number): number {
  const [mantissa = '', exponent] = String(value).split('e');
  return Math.max(0, (mantissa.split('.')[1] ?? '').length - Number(exponent ?? 0));
}

/** How many values a grid from `min` to `max` has, both counted when the last step falls on it. */
export function gridSize(grid: { min: number; max: number; step: number }): number {
  return Math.floor((grid.max - grid.min) / grid.step + 1e-9) + 1;
}

/** The value at a position of a grid, exact in decimal: 2 + 13 × 0.1 is 3.3. */
export function gridValue(grid: { min: number; step: number }, position: number): number {
  return Number((grid.min + position * grid.step).toFixed(Math.min(12, Math.max(placesOf(grid.min), placesOf(grid.step)))));
}
