import { shiftDecimal } from './decimal.js';
import type { Unit } from './spelling.js';
import { readUnit } from './unit-reading.js';

export type { Unit } from './spelling.js';

const plainNumber: Unit = { quantity: 'ratio', symbol: '', name: '', factor: 1, exponent: 0, offset: 0, base: null };
const known = new Map<string, Unit | null>();

/**
 * The unit a program names ("W", "mm²", "ohm/km", "dB(A)"; "" or "1" for a plain number), or null if there is no such unit.
 * Capitals count where two units differ by them.
 */
export function findUnit(name: string): Unit | null {
  const remembered = known.get(name);
  if (remembered !== undefined) return remembered;
  const found = name === '' || name === '1' ? plainNumber : name.length > 48 ? null : bestReading(name);
  if (known.size > 500) known.clear();
  known.set(name, found);
  return found;
}

function bestReading(name: string): Unit | null {
  const { readings } = readUnit(name);
  return (readings.find((reading) => reading.exact) ?? readings[0])?.unit ?? null;
}

/** The value in the coherent SI unit of its quantity (levels stay in their own unit). */
export function toSi(value: number, unit: Unit): number {
  if (unit.factor === 1 && unit.offset === 0) return shiftDecimal(value, unit.exponent);
  return tidy(shiftDecimal((value + unit.offset) * unit.factor, unit.exponent), unit);
}

/** The value in another unit of the same quantity; not a number if the quantities differ. */
export function convert(value: number, from: Unit, to: Unit): number {
  if (from.quantity !== to.quantity) return NaN;
  if (from.factor === to.factor && from.offset === to.offset) return shiftDecimal(value, from.exponent - to.exponent);
  const si = (value + from.offset) * from.factor;
  return tidy(shiftDecimal(si / to.factor, from.exponent - to.exponent) - to.offset, from.offset === 0 ? to : from);
}

/** Drops the noise of binary arithmetic: 15 figures, or 12 where an offset was added and taken away. */
const tidy = (value: number, unit: Unit): number =>
  Number.isFinite(value) ? Number(value.toPrecision(unit.offset === 0 ? 15 : 12)) : value;
