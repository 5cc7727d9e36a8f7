import { shiftDecimal } from './units.js';

/** A number as typed: its decimal digits with a power of ten, or the value of a fraction. */
export interface TypedNumber {
  readonly value: number;
  /** Plain decimal digits with sign and point, so that a change of prefix costs no accuracy; null for a fraction. */
  readonly digits: string | null;
  readonly exponent: number;
}

export type Scan =
  | { readonly found: true; readonly number: TypedNumber; readonly length: number }
  | {
      readonly found: false;
      readonly why: 'none' | 'grouping' | 'two-readings' | 'several' | 'divided-by-nothing';
      readonly readings?: readonly [string, string];
    };

const powerAlone = /^10 ?(?:\^|\*\*) ?([+-]?) ?(\d+)/;
const mixed = /^(\d+) (\d+) ?\/ ?(\d+)(?![\d.,/])/;
const fraction = /^(\d+) ?\/ ?(\d+)(?![\d.,/])/;
/** Digits with points, commas, underlines, apostrophes or single spaces between groups of three. */
const run = /^[.,]?\d(?:[\d_]|[.,](?=\d)|'(?=\d{3}(?!\d))| (?=\d{3}(?![\d/])))*/;
const runWithFeet = /^[.,]?\d(?:[\d_]|[.,](?=\d)| (?=\d{3}(?![\d/])))*/;
const scientific = /^[eE]([+-]?)(\d+)/;
const timesTen = /^ ?(?:[x*·]|times) ?10 ?(?:\^|\*\*) ?([+-]?) ?(\d+)/i;
const western = /^\d{1,3}(?:,\d{3})+$/;
const indian = /^\d{1,2}(?:,\d{2})+,\d{3}$/;

/**
 * Reads the number a text begins with. The point is always a decimal point, unless it repeats in groups of three; a comma is a
 * decimal comma, unless it groups; where one comma could be either ("1,234"), the answer is both readings and no number.
 * @param feet whether ' may stand for feet, so that it cannot group digits
 */
export function scanNumber(text: string, feet: boolean): Scan {
  const sign = /^([+-]?) ?/.exec(text) ?? ['', ''];
  const lead = sign[0].length;
  const rest = text.slice(lead);
  const scan = scanUnsigned(rest, feet);
  if (!scan.found) return scan;
  const { number } = scan;
  const negative = sign[1] === '-';
  return {
    found: true,
    length: lead + scan.length,
    number: negative
      ? { value: -number.value, digits: number.digits === null ? null : `-${number.digits}`, exponent: number.exponent }
      : number,
  };
}

function scanUnsigned(text: string, feet: boolean): Scan {
  const power = powerAlone.exec(text);
  if (power !== null) return decimal('1', Number(`${power[1]}${power[2]}`), power[0].length);
  const parts = mixed.exec(text);
  if (parts !== null) {
    const [whole, over, under] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
    if (under !== 0 && over >= under) return { found: false, why: 'several' };
    return ofFraction(whole, over, under, parts[0].length);
  }
  const simple = fraction.exec(text);
  if (simple !== null) return ofFraction(0, Number(simple[1]), Number(simple[2]), simple[0].length);
  const figures = (feet ? runWithFeet : run).exec(text)?.[0];
  if (figures === undefined) return { found: false, why: 'none' };
  const digits = plainDigits(figures);
  if (typeof digits !== 'string') return digits;
  const after = text.slice(figures.length);
  const exponent = scientific.exec(after) ?? timesTen.exec(after);
  const length = figures.length + (exponent?.[0].length ?? 0);
  return decimal(digits, exponent === null ? 0 : Number(`${exponent[1]}${exponent[2]}`), length);
}

const decimal = (digits: string, exponent: number, length: number): Scan => ({
  found: true,
  number: { value: Number(`${digits}e${exponent}`), digits, exponent },
  length,
});

function ofFraction(whole: number, over: number, under: number, length: number): Scan {
  if (under === 0) return { found: false, why: 'divided-by-nothing' };
  return { found: true, number: { value: whole + over / under, digits: null, exponent: 0 }, length };
}

/** Digits with at most one decimal point, or what stands in the way. */
function plainDigits(figures: string): string | Scan {
  if (/^\d*\.?\d*$/.test(figures)) return figures;
  const [head = '', ...groups] = figures.split(/[ _']/);
  let joined = figures;
  if (groups.length > 0) {
    const fits =
      /^\d{1,3}$/.test(head) && groups.every((group, index) => (index < groups.length - 1 ? /^\d{3}$/ : /^\d{3}(?:[.,]\d+)?$/).test(group));
    const tail = /^\d+[.,]\d{3}$/.test(head) && groups.every((group) => /^\d{1,3}$/.test(group));
    if (!fits && !tail) return { found: false, why: 'several' };
    joined = [head, ...groups].join('');
    if (/,/.test(joined)) return joined.replace(',', '.');
  }
  const points = joined.split('.').length - 1;
  const commas = joined.split(',').length - 1;
  if (points > 0 && commas > 0) return bothSeparators(joined, points, commas);
  if (points > 1) return /^\d{1,3}(?:\.\d{3})+$/.test(joined) ? joined.replace(/\./g, '') : { found: false, why: 'several' };
  if (commas > 1) return western.test(joined) || indian.test(joined) ? joined.replace(/,/g, '') : { found: false, why: 'several' };
  if (/^[1-9]\d{0,2},\d{3}$/.test(joined)) {
    return { found: false, why: 'two-readings', readings: [joined.replace(',', ''), joined.replace(',', '.')] };
  }
  return joined.replace(',', '.');
}

/** "1,234.5" and "1.234,5": the later sign is the decimal one, if it is alone and the earlier one groups properly. */
function bothSeparators(figures: string, points: number, commas: number): string | Scan {
  const pointIsLast = figures.lastIndexOf('.') > figures.lastIndexOf(',');
  if ((pointIsLast ? points : commas) > 1) return { found: false, why: 'grouping' };
  const swapped = pointIsLast ? figures : figures.replace(/[.,]/g, (sign) => (sign === '.' ? ',' : '.'));
  const [whole = '', part = ''] = swapped.split('.');
  return western.test(whole) || indian.test(whole) ? `${whole.replace(/,/g, '')}.${part}` : { found: false, why: 'grouping' };
}

/** The number with its power of ten moved by some places. */
export function movePoint(number: TypedNumber, places: number): number {
  if (places === 0) return number.value;
  return number.digits === null ? shiftDecimal(number.value, places) : Number(`${number.digits}e${number.exponent + places}`);
}

/** True of a number that is not nought but too small for the machine to hold. */
export const vanishes = (number: TypedNumber, value: number): boolean =>
  value === 0 && (number.digits === null ? number.value !== 0 : /[1-9]/.test(number.digits));
