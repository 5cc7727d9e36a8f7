import { findUnit, shiftDecimal } from './numeric-answer/units.js';

/** Numbers as a standard sets them (ISO 80000-1): value, narrow no-break space, upright unit; a real minus sign. */

export const narrowSpace = '\u202f';
export const minusSign = '\u2212';

export interface NumberFormat {
  /** Significant figures at most; noughts at the end of the decimals are dropped. 6 unless told. */
  readonly significant?: number;
  /** Decimals, kept even if noughts; takes the place of `significant`. */
  readonly decimals?: number;
}

/** Rounds to a number of decimals as taught at school: 5 goes away from nought, decided on the decimal digits. */
export function roundDecimals(value: number, decimals: number): number {
  if (!Number.isFinite(value)) return value;
  const rounded = shiftDecimal(Math.round(shiftDecimal(Math.abs(value), decimals)), -decimals);
  return value < 0 ? 0 - rounded : rounded;
}

/** Rounds to significant figures, 5 away from nought; figures from 1 to 15. */
export function roundSignificant(value: number, figures: number): number {
  if (value === 0 || !Number.isFinite(value)) return value;
  return roundDecimals(value, figures - 1 - Number(value.toExponential(14).split('e')[1]));
}

const raise = (exponent: number): string =>
  [...String(exponent)].map((sign) => (sign === '-' ? '⁻' : ('⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(sign)] ?? ''))).join('');
const group = (digits: string): string => (digits.length < 5 ? digits : digits.replace(/\B(?=(\d{3})+$)/g, narrowSpace));

/**
 * A number as a page shows it: 0.2609, −4.5, 12 500 (narrow spaces from five digits), 1.5 × 10⁻⁷ for what would need many noughts.
 * A value that is not a finite number gives an em dash.
 */
export function formatNumber(value: number, format: NumberFormat = {}): string {
  if (!Number.isFinite(value)) return '—';
  const rounded = format.decimals === undefined ? roundSignificant(value, format.significant ?? 6) : roundDecimals(value, format.decimals);
  const size = Math.abs(rounded);
  const sign = rounded < 0 ? minusSign : '';
  if (size !== 0 && (size >= 1e12 || size < 1e-4) && format.decimals === undefined) {
    const [mantissa = '', exponent = '0'] = size.toExponential().split('e');
    return `${sign}${mantissa}${narrowSpace}×${narrowSpace}10${raise(Number(exponent))}`;
  }
  const [whole = '', part = ''] = (format.decimals === undefined ? plain(size) : size.toFixed(format.decimals)).split('.');
  return `${sign}${group(whole)}${part === '' ? '' : `.${part}`}`;
}

/** Decimal digits without a power of ten, for values from 0.0001 to 10^12. */
const plain = (size: number): string => (size < 1e-6 && size !== 0 ? size.toFixed(12) : String(size));

/** Value and unit: "2.2 kW" with a narrow no-break space; no space before a degree sign of angle; a plain number has no unit. */
export function formatQuantity(value: number, unit: string, format: NumberFormat = {}): string {
  const symbol = findUnit(unit)?.symbol ?? unit;
  const number = formatNumber(value, format);
  return symbol === '' ? number : `${number}${symbol === '°' ? '' : narrowSpace}${symbol}`;
}
