import type { SingleQuestion } from './questions/schema.js';
import { acceptNumber, tellTalesOf, type Draw, type TellTale } from './families/draw.js';
import { randomFrom, shuffled } from './random.js';
import { shiftDecimal } from '../../shared/numeric-answer/units.js';

/** A question as it is put to somebody, and whether what came back is right. */

export interface ShownOption {
  /** What a form sends: the option's place in the pack, or the listed value. It does not tell which is the key. */
  value: string;
  text: string;
  key: boolean;
  why: string;
  /** The mistake that leads to this number; null where none is named. */
  tellTale: string | null;
}

/** Options that speak of the others, such as "Both of these", make sense only where they were written. */
const speaksOfOthers =
  /^(both|neither|either|all|none|any|only) (of|the|a\b|b\b|c\b|d\b|one and|1 and)|\b(of the above|of these answers)\b/i;

/** The options of a fixed question in the order of this seed; ordered numbers, and options that speak of one another, stay as written. */
export function shownOptions(question: SingleQuestion, seed: number): ShownOption[] {
  const options = question.options.map((option, index): ShownOption => ({
    value: String(index),
    text: option.text,
    key: option.key === true,
    why: option.why ?? '',
    tellTale: null,
  }));
  const stays = question.order === 'fixed' || question.options.some(({ text }) => speaksOfOthers.test(text));
  return stays ? options : shuffled(options, randomFrom(`options ${question.id} ${seed}`));
}

/** The values a draw offers, in their order: those of its list, or those given; null where a number is to be typed. */
export function drawOptions(draw: Draw, offered = draw.options): ShownOption[] | null {
  if (offered === null) return null;
  const { value, shown } = draw.key;
  return offered.map((option): ShownOption => {
    const tale = draw.tellTales.find((t) => t.name === option.tellTale);
    const key = option.value === value || option.value === shown;
    return { value: String(option.value), text: option.text, key, why: tale?.tell ?? '', tellTale: option.tellTale };
  });
}

export interface Mark {
  /** Whether the whole answer is right. */
  right: boolean;
  /** 0 to 1: the share of a question's parts that are right. */
  score: number;
  tellTales: TellTale[];
  /** The right figures with a wrong power of ten; null for any other answer, and for a chosen one. */
  slip: Slip | null;
}

/** A wrong number whose figures are right. */
export interface Slip {
  /** How many times too large: 1000, or 0.001 where it is too small. */
  factor: number;
  /** A prefix misread (thousands and millions), or a decimal point by a place or two. */
  kind: 'prefix' | 'point';
}

/** @returns null when no option has this value */
export function markOption(options: readonly ShownOption[], value: string, draw: Draw | null): Mark | null {
  const chosen = options.find((option) => option.value === value);
  if (chosen === undefined) return null;
  const right = chosen.key;
  return { right, score: right ? 1 : 0, tellTales: right || draw === null ? [] : mistakesBehind(chosen, draw), slip: null };
}

/** Printed as somebody would print it, a number may lie as near to another mistake: the one it was made from is what counts. */
function mistakesBehind({ value, tellTale }: ShownOption, draw: Draw): TellTale[] {
  const named = draw.tellTales.find(({ name }) => name === tellTale);
  return named === undefined ? tellTalesOf(draw, Number(value)) : draw.tellTales.filter((other) => other.value === named.value);
}

type Marked = Pick<Draw, 'key' | 'tellTales'>;

/** @param value the number as read, in the draw's own unit */
export function markNumber(draw: Marked, value: number): Mark {
  const right = acceptNumber(draw, value);
  if (right) return { right, score: 1, tellTales: [], slip: null };
  return { right, score: 0, tellTales: tellTalesOf(draw, value), slip: slipOf(draw, value) };
}

const slips = [3, -3, 6, -6, 1, -1, 2, -2];

/**
 * The power of ten that a wrong number is off by, if without it the number would be right. A window may be so wide that it holds numbers
 * with other figures, so it must also be within a tenth of the answer, or the answer as the examiner gives it.
 */
function slipOf({ key }: Marked, value: number): Slip | null {
  if (!Number.isFinite(value) || value === 0) return null;
  for (const power of slips) {
    const meant = shiftDecimal(value, -power);
    const near = Math.abs(meant - key.value) <= 0.1 * Math.abs(key.value) || meant === key.shown;
    if (near && acceptNumber({ key }, meant)) return { factor: shiftDecimal(1, power), kind: Math.abs(power) < 3 ? 'point' : 'prefix' };
  }
  return null;
}

const times: Readonly<Record<number, string>> = { 1: 'ten', 2: 'a hundred', 3: 'a thousand', 6: 'a million' };

/**
 * What a page says of a slip. Before another try with fresh numbers it says where to look and no more: neither which way nor how far.
 * @param early whether help is still withheld
 */
export function slipWords(slip: Slip, early: boolean): { label: string; tell: string } {
  if (early) return { label: 'The figures look right', tell: 'Check the unit and its prefix, and the decimal point.' };
  const power = Math.round(Math.log10(slip.factor));
  const amount = `The answer came out ${times[Math.abs(power)] ?? ''} times too ${power > 0 ? 'large' : 'small'}`;
  const places = Math.abs(power) === 1 ? 'by one place' : 'by two places';
  const why =
    slip.kind === 'point'
      ? `the decimal point slipped ${places}. Check the unit as well`
      : 'look again at the unit and its prefix, such as k for kilo or m for milli';
  return { label: 'Your figures are right', tell: `${amount}: ${why}.` };
}
