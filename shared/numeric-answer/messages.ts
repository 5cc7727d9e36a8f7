import { quantityWords } from './quantities.js';
import type { Unit } from './units.js';

/** What the reader says when it did not understand: plain words, and what to do. No value that could be a hint is ever named. */

/** "in amperes (A)"; "as a plain number" where there is no unit. */
const inUnit = (unit: Unit): string => (unit.symbol === '' ? 'as a plain number' : `in ${unit.name} (${unit.symbol})`);
const aloneOrWith = (unit: Unit): string =>
  unit.symbol === '' ? 'Type the number alone.' : `Type the number alone, or with ${unit.symbol}.`;
const shown = (text: string): string => `“${text.length > 64 ? `${text.slice(0, 64)}…` : text}”`;

export const messages = {
  empty: (unit: Unit): string => `Nothing is typed yet. Type one number ${inUnit(unit)}.`,
  noNumber: (text: string, unit: Unit): string => `There is no number in ${shown(text)}. Type the answer in figures, ${inUnit(unit)}.`,
  tooLong: (): string => 'That is too long to be one number. Type only the number and its unit, 64 characters at most.',
  outOfRange: (): string =>
    'That number is too large or too small to work with. Check the noughts, or the power of ten, and type it again.',
  dividedByNothing: (): string => 'A fraction cannot have 0 underneath. Check it, or type the number with a decimal point.',
  several: (text: string): string => `${shown(text)} holds more than one number. Type only your answer, as one number with its unit.`,
  limit: (text: string): string => `${shown(text)} is a limit or a range. Type the one number you worked out.`,
  twoReadings: (text: string, [whole, decimal]: readonly [string, string]): string =>
    `${shown(text)} can be read as ${whole} or as ${decimal}. Type it without the comma: ${whole}, or ${decimal} with a point.`,
  clock: (text: string): string =>
    `${shown(text)} can be read as hours and minutes or as minutes and seconds. Type each number with its unit: h, min or s.`,
  metresAndMore: (text: string): string =>
    `It is not clear what the figure after the “m” in ${shown(text)} stands for: tenths of a metre, or centimetres. Type the length with a decimal point.`,
  grouping: (text: string): string =>
    `It is not clear which sign in ${shown(text)} is the decimal point. Type the number with one point and no other signs.`,
  numberFirst: (text: string, unit: Unit): string =>
    `${shown(text)} starts with something that is not a number. Type the number first, ${inUnit(unit)}.`,
  wrongKind: (text: string, typed: Unit, unit: Unit): string =>
    `${shown(text)} is ${quantityWords[typed.quantity]}${typed.symbol === '' ? '' : ` in ${typed.name}`}, and this answer is ${quantityWords[unit.quantity]}, ${inUnit(unit)}. ${aloneOrWith(unit)}`,
  unknownUnit: (text: string, unit: Unit): string =>
    `${shown(text)} is not a unit that is known here. This answer is ${quantityWords[unit.quantity]}, ${inUnit(unit)}. ${aloneOrWith(unit)}`,
  eitherPrefix: (text: string, first: Unit, second: Unit): string =>
    `${shown(text)} could be ${first.name} (${first.symbol}) or ${second.name} (${second.symbol}). Write the unit out in words (${first.name} or ${second.name}), or type the number alone in the unit asked for.`,
  minutesOrMetres: (): string => 'A single “m” stands for metres. If you mean minutes, type min.',
  prefixAlone: (text: string, unit: Unit): string =>
    `It is not clear what ${shown(text)} stands for. Write the whole unit, such as ${unit.symbol}.`,
  whichDegrees: (): string => 'It is not clear which degrees are meant. Type °C, °F or K.',
  unknownExpected: (name: string): string =>
    `This field asks for the unit ${shown(name)}, which is not known here. Tell the person who runs this server.`,
} as const;
