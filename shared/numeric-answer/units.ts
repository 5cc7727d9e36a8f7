import { quotients } from './quantities.js';
import { simpleReadings } from './spelling.js';
import type { Unit, UnitReading } from './spelling.js';

export type { Unit } from './spelling.js';

/** The one way in to units: whole spellings, squares and quotients included, the unit a program names, and conversion. */

function toPower(reading: UnitReading, power: 2 | 3): UnitReading {
  const raise = (unit: Unit): Unit => ({
    quantity: power === 2 ? 'area' : 'volume',
    symbol: `${unit.symbol}${power === 2 ? '²' : '³'}`,
    name: `${power === 2 ? 'square' : 'cubic'} ${unit.name}`,
    factor: unit.factor ** power,
    exponent: unit.exponent * power,
    offset: 0,
    base: null,
  });
  return { unit: raise(reading.unit), exact: reading.exact, rival: reading.rival === null ? null : raise(reading.rival) };
}

/** Readings of one token without a division line. */
function readingsOfToken(token: string): UnitReading[] {
  const power = token.endsWith('2') ? 2 : token.endsWith('3') ? 3 : null;
  if (power !== null) {
    return readingsOfToken(token.slice(0, -1))
      .filter((reading) => reading.unit.quantity === 'length')
      .map((reading) => toPower(reading, power));
  }
  return simpleReadings(token);
}

const singular = (name: string): string =>
  name === 'feet' ? 'foot' : name === 'inches' ? 'inch' : name.replace('feet', 'foot').replace('inches', 'inch').replace(/s$/, '');

function divide(top: UnitReading, bottom: UnitReading, times: number): UnitReading {
  const exponent = Math.round(Math.log10(times));
  const quotient = (over: Unit): Unit => ({
    quantity: over.quantity,
    symbol: `${over.symbol}/${times === 1 ? '' : `${times} `}${bottom.unit.symbol}`,
    name: `${over.name} per ${times === 1 ? singular(bottom.unit.name) : `${times} ${bottom.unit.name}`}`,
    factor: over.factor / bottom.unit.factor,
    exponent: over.exponent - bottom.unit.exponent - exponent,
    offset: 0,
    base: null,
  });
  return {
    unit: quotient(top.unit),
    exact: top.exact && bottom.exact,
    rival: top.rival === null ? null : quotient(top.rival),
  };
}

function readingsOfQuotient(parts: readonly string[]): UnitReading[] {
  if (parts.length > 3) return [];
  let sofar = readingsOfToken(parts[0] ?? '').map((reading) => ({ reading, key: reading.unit.quantity as string }));
  for (const part of parts.slice(1)) {
    const [, digits = '', token = ''] = /^(10{0,3}(?=\D))?(.*)$/.exec(part) ?? [];
    const bottoms = readingsOfToken(token);
    sofar = sofar.flatMap(({ reading, key }) =>
      bottoms.map((bottom) => ({ reading: divide(reading, bottom, Number(digits || 1)), key: `${key}/${bottom.unit.quantity}` })),
    );
  }
  return sofar.flatMap(({ reading, key }) => {
    const quantity = quotients[key];
    if (quantity === undefined) return [];
    const named = (unit: Unit): Unit => ({ ...unit, quantity });
    return [{ unit: named(reading.unit), exact: reading.exact, rival: reading.rival === null ? null : named(reading.rival) }];
  });
}

/** Brings a spelling into the form of the tables: "Watts per sq. metre", "W m^-2" and "W/m²" all become one token over another. */
function tidySpelling(text: string): string {
  const plain = text
    .replace(/²/g, '2')
    .replace(/³/g, '3')
    .replace(/[µμ]/g, 'u')
    .replace(/\*\*|\^/g, '^')
    .replace(/\bper[ -]?cents?\b/i, '%')
    .replace(/ ?\bper\b ?/gi, '/')
    .replace(/([a-z]) ?\^?-1$/i, '/$1')
    .replace(/([a-z]) ?\^?-([23])$/i, '/$1$2')
    .replace(/\^/g, '')
    .replace(/\b([kcm]m)s\b/gi, '$1')
    .replace(/\bsq([kcm]?m|ft|in)\b/gi, '$12')
    .replace(/\b(?:square|sq)\b\.? ?([a-z]+)/gi, '$12')
    .replace(/([a-z]+) ?\b(?:squared|sq)\b/gi, '$12')
    .replace(/\bcubic ?([a-z]+)/gi, '$13');
  return plain
    .replace(/\/1 /g, '/')
    .replace(/(\d) (?=\D)/g, '$1')
    .replace(/([a-z])-(?=[a-z])/gi, '$1')
    .replace(/ (?!\d)|[.·*_()]|^-/g, '');
}

/** A spelling brought into order, and every way to read it as a unit, best first; no way if it is not a unit. */
export interface Spelt {
  readonly token: string;
  readonly readings: readonly UnitReading[];
}
const remembered = new Map<string, Spelt>();

/** Reads a spelling as a unit. Short spellings are remembered, a few hundred at a time. */
export function readUnit(text: string): Spelt {
  const before = remembered.get(text);
  if (before !== undefined) return before;
  const token = tidySpelling(text);
  const spelt = { token, readings: token === '' || token.length > 48 ? [] : readingsOf(token) };
  if (text.length > 24) return spelt;
  if (remembered.size > 400) remembered.clear();
  remembered.set(text, spelt);
  return spelt;
}

const readingsOf = (token: string): UnitReading[] =>
  token.includes('/') ? [...readingsOfToken(token), ...readingsOfQuotient(token.split('/'))] : readingsOfToken(token);

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
  const converted = shiftDecimal(si / to.factor, from.exponent - to.exponent) - to.offset;
  // 32 °F is 0 °C, and not what is left of 273.15 - 273.15.
  if (Math.abs(converted) < 1e-12 * Math.abs(to.offset)) return 0;
  return tidy(converted, from.offset === 0 ? to : from);
}

/** Drops the noise of binary arithmetic: 15 figures, or 12 where an offset was added and taken away. */
const tidy = (value: number, unit: Unit): number =>
  Number.isFinite(value) ? Number(value.toPrecision(unit.offset === 0 ? 15 : 12)) : value;

/** A number times ten to a power, as exact as the machine allows. */
export function shiftDecimal(value: number, places: number): number {
  if (places === 0) return value;
  const [mantissa = '', exponent = '0'] = String(value).split('e');
  return Number.isFinite(value) ? Number(`${mantissa}e${Number(exponent) + places}`) : value;
}
