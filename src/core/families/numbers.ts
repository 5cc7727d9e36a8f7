import type { Rounding } from './schema.js';

/**
 * Decimal arithmetic on doubles, for figures that people read. Everything is rounded as it is printed in decimal,
 * halves away from zero as taught in school (2.125 to two places is 2.13), never by the binary that lies behind it.
 */

/** Powers of ten that double precision holds exactly. */
const tens = Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));

/** value × 10^places, as near as double precision comes; NaN where that is not nearly exact. */
function scaled(value: number, places: number): number {
  const by = tens[Math.abs(places)];
  if (by === undefined) return NaN;
  return places < 0 ? value / by : value * by;
}

/**
 * The nearest number with twelve significant figures: drops the noise of double precision, and any last-digit difference between machines.
 * Printing and reading back is what is meant, and slow; where no half is near, a product, a rounding and a quotient give the same.
 */
export function tidy(value: number): number {
  const size = Math.abs(value);
  if (Number.isInteger(value) && size < 1e12) return value;
  const places = 11 - Math.floor(Math.log10(size));
  const whole = scaled(size, places);
  if (places >= 0 && whole >= 1e11 && whole < 999_999_999_999 && Math.abs((whole % 1) - 0.5) > 1e-3)
    return Math.sign(value) * (Math.round(whole) / (tens[places] as number));
  return Number.isFinite(value) ? Number(value.toPrecision(12)) : value;
}

/** value × 10^places, exactly as written in decimal: 0.145 by 2 is 14.5, where 0.145 * 100 is 14.499999999999998. */
function shift(value: number, places: number): number {
  // A whole number and an exact power of ten: one product or quotient is rounded once, as reading the decimal would be.
  if (Number.isSafeInteger(value) && places < 0 && places > -23) return value / (tens[-places] as number);
  const [mantissa, exponent] = String(value).split('e');
  return Number(`${mantissa}e${Number(exponent ?? 0) + places}`);
}

const cut = { nearest: Math.round, up: Math.ceil, down: Math.floor } as const;

function decimals(value: number, places: number, mode: Rounding['mode']): number {
  if (places >= 0 && Number.isInteger(value) && Math.abs(value) < 1e12) return value;
  // "Up" means away from zero here; answers are positive, so that is also the larger figure.
  return Math.sign(value) * shift(cut[mode](wholeAndRest(Math.abs(value), places)), -places);
}

/** value × 10^places for cutting: straight where no whole or half is near, else without the noise, exactly as written in decimal. */
function wholeAndRest(value: number, places: number): number {
  const straight = scaled(value, places);
  const halves = straight * 2;
  if (straight < 1e9 && Math.abs(halves - Math.round(halves)) > 1e-6 + straight * 1e-11) return straight;
  return shift(tidy(value), places);
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
