import type { SingleQuestion } from './question.js';
import { acceptNumber, tellTalesOf, type Draw, type TellTale } from './families/draw.js';
import { randomFrom, shuffled } from './random.js';

/** A question as it is put to somebody, and whether what came back is right. */

export interface ShownOption {
  /** What a form sends: the option's place in the pack, or the listed value. It does not tell which is the key. */
  value: string;
  text: string;
  key: boolean;
  why: string;
}

/** The options of a fixed question in the order of this seed; ordered numbers stay as written. */
export function shownOptions(question: SingleQuestion, seed: number): ShownOption[] {
  const options = question.options.map((option, index): ShownOption => ({
    value: String(index),
    text: option.text,
    key: option.key === true,
    why: option.why ?? '',
  }));
  return question.order === 'fixed' ? options : shuffled(options, randomFrom(`options ${question.id} ${seed}`));
}

/** The listed values of a choice draw, in the order of the list; null for a draw that asks for a typed number. */
export function drawOptions(draw: Draw): ShownOption[] | null {
  if (draw.options === null) return null;
  return draw.options.map((option): ShownOption => {
    const tale = draw.tellTales.find((t) => t.name === option.tellTale);
    return { value: String(option.value), text: option.text, key: option.value === draw.key.value, why: tale?.tell ?? '' };
  });
}

export interface Mark {
  right: boolean;
  tellTales: TellTale[];
}

/** @returns null when no option has this value */
export function markOption(options: readonly ShownOption[], value: string, draw: Draw | null): Mark | null {
  const chosen = options.find((option) => option.value === value);
  if (chosen === undefined) return null;
  const right = chosen.key;
  return { right, tellTales: right || draw === null ? [] : tellTalesOf(draw, Number(value)) };
}

/** @param value the number as read, in the draw's own unit */
export function markNumber(draw: Draw, value: number): Mark {
  const right = acceptNumber(draw, value);
  return { right, tellTales: right ? [] : tellTalesOf(draw, value) };
}
