import { roundTo, tidy } from './numbers.js';
import type { Acceptance, Direction, Rounding } from './schema.js';

/** The right answer of one draw, with all that marking needs. */
export interface Key {
  /** The exact answer (twelve significant figures), in `unit`. */
  value: number;
  /** As the examiner gives it. */
  shown: number;
  unit: string;
  acceptFrom: number;
  acceptTo: number;
  /** When not 0, the exact answer correctly rounded to so many significant figures is right as well. */
  sigFigs: number;
  round: Rounding;
}

/** A wrong value that betrays a known misconception. */
export interface TellTale {
  name: string;
  label: string;
  tell: string;
  direction: Direction;
  value: number;
  unit: string;
}

export function keyOf(exact: number, unit: string, round: Rounding, accept: Acceptance): Key {
  const below = Math.max(accept.belowAbs, accept.belowRel * Math.abs(exact));
  const above = Math.max(accept.aboveAbs, accept.aboveRel * Math.abs(exact));
  return {
    value: exact,
    shown: roundTo(exact, round),
    unit,
    acceptFrom: tidy(exact - below),
    acceptTo: tidy(exact + above),
    sigFigs: accept.sigFigs,
    round,
  };
}

/** Equal but for the noise of turning units into each other. */
function same(a: number, b: number): boolean {
  return Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b));
}

function isRight(key: Key, value: number): boolean {
  if (!Number.isFinite(value)) return false;
  if (value >= key.acceptFrom && value <= key.acceptTo) return true;
  if (same(value, key.acceptFrom) || same(value, key.acceptTo)) return true;
  return key.sigFigs > 0 && same(value, roundTo(key.value, { mode: 'nearest', sf: key.sigFigs }));
}

/** Whether a reply, in the key's unit, is right: within the window, both ends included, or rightly rounded where that counts. */
export function acceptNumber(draw: { key: Key }, value: number): boolean {
  return isRight(draw.key, value);
}

/**
 * The separation rule: a mistaken value may be used in a draw only when it is positive, outside one and a half times the window as
 * worked, and not right when somebody rounds it as the examiner does or to three figures.
 */
export function isApart(key: Key, value: number): boolean {
  if (!Number.isFinite(value) || value <= 0) return false;
  const below = 1.5 * (key.value - key.acceptFrom);
  const above = 1.5 * (key.acceptTo - key.value);
  if (value >= key.value - below && value <= key.value + above) return false;
  if (isFarOff(key, value)) return true;
  return ![value, roundTo(value, key.round), roundTo(value, { mode: 'nearest', sf: 3 })].some((seen) => isRight(key, seen));
}

/** Whether no rounding could bring a value to a right one: saves rounding most mistakes, which is what takes the time. */
function isFarOff(key: Key, value: number): boolean {
  const { dp, sf = 3 } = key.round;
  const moved = Math.max(0.01 * value, dp === undefined ? value * 10 ** (1 - sf) : 10 ** -dp);
  // Rounding to one figure moves the right answer by half of it at most, to n figures by a tenth of that for each more.
  const earned = key.sigFigs === 0 ? 0 : 5 * 10 ** -key.sigFigs * key.value;
  const distance = value < key.value ? key.acceptFrom - value : value - key.acceptTo;
  return distance > moved + earned;
}

/** How near a reply must be to a mistaken value to betray it: 2 %, as the usual window of a right answer. */
const tellTaleWindow = 0.02;

function betrays(key: Key, mistaken: number, value: number): boolean {
  if (Math.abs(value - mistaken) <= tellTaleWindow * mistaken) return true;
  const rounded = [roundTo(mistaken, key.round), roundTo(mistaken, { mode: 'nearest', sf: 2 })];
  return rounded.some((seen) => seen !== 0 && same(value, seen));
}

/**
 * Which mistakes a wrong reply betrays: those whose value is nearest, within 2 % or equal to the mistaken value rounded as the examiner
 * rounds or to two figures. Two mistakes with one value are both given, in the family's order. Empty for a right reply and for any other.
 */
export function tellTalesOf(draw: { key: Key; tellTales: readonly TellTale[] }, value: number): TellTale[] {
  if (!Number.isFinite(value) || acceptNumber(draw, value)) return [];
  const near = draw.tellTales.filter((tellTale) => betrays(draw.key, tellTale.value, value));
  const distance = (tellTale: TellTale): number => Math.abs(tellTale.value - value);
  const nearest = near.reduce<TellTale | null>((best, next) => (best === null || distance(next) < distance(best) ? next : best), null);
  return nearest === null ? [] : near.filter((tellTale) => same(tellTale.value, nearest.value));
}
