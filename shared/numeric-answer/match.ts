import { messages } from './messages.js';
import { prefixes } from './base-units.js';
import type { Prefix } from './base-units.js';
import type { QuantityId } from './quantities.js';
import { prefixed, prefixOf, rivalPrefix } from './spelling.js';
import type { Unit, UnitReading } from './spelling.js';
import { readUnit } from './units.js';

/** How a typed unit fits the unit expected. */
export type UnitMatch =
  | { readonly kind: 'unit'; readonly unit: Unit }
  | { readonly kind: 'ask'; readonly message: string }
  /** A unit of another kind of quantity. */
  | { readonly kind: 'other'; readonly unit: Unit }
  | { readonly kind: 'unknown' };

/** Words people add after a unit that do not change the number. */
const remark =
  / ?(?:a\.?c|d\.?c|r\.?m\.?s|peak|pk|pp|pep|e\.?i\.?r\.?p|e\.?r\.?p|approx(?:imately)?|roughly|or so|each|total|in (?:all|total)|altogether|please|ish|i think|fuse|breaker|mains|supply|rf|long|high|tall|wide|away|apart|~)\.?$/i;

/** A gain or a sound level is often typed as plain dB; it is then the kind of dB asked for. */
const readsPlainDecibels: ReadonlySet<QuantityId> = new Set(['gain', 'sound-level', 'sound-level-c']);

/** Finds the unit a text names, preferring one of the kind expected. */
export function matchUnit(text: string, expected: Unit): UnitMatch {
  const match = matchOnce(text, expected);
  if (match.kind !== 'unknown') return match;
  const bare = text.replace(remark, '').replace(remark, '');
  if (bare === text) return match;
  return bare === '' ? { kind: 'unit', unit: expected } : matchOnce(bare, expected);
}

function matchOnce(text: string, expected: Unit): UnitMatch {
  const { token, readings } = readUnit(text);
  if (expected.quantity === 'temperature' && /^(?:°|deg|degs|degrees?)$/i.test(token)) {
    return expected.symbol === 'K' ? { kind: 'ask', message: messages.whichDegrees() } : { kind: 'unit', unit: expected };
  }
  if (expected.quantity === 'time' && /^m$/i.test(token)) return { kind: 'ask', message: messages.minutesOrMetres() };
  const own = readings.filter((reading) => reading.unit.quantity === expected.quantity);
  const best = own.find((reading) => reading.exact) ?? own[0];
  const exactly = readings.find((reading) => reading.exact);
  // A single letter in the wrong capitals is the unit asked for (5 H of hours); longer spellings are what they say (Pa is no pA).
  if (best !== undefined && (best.exact || exactly === undefined || token.length === 1)) return settled(best, text);
  // "5 m" is metres and "5 N" newtons, whatever was asked; but K is for kilo to most people, not for kelvin.
  const bare = exactly === undefined || /^k(?:ilo)?$/i.test(token) ? barePrefix(token, expected) : null;
  if (bare !== null) return bare;
  const other = exactly ?? readings[0];
  if (other === undefined) return { kind: 'unknown' };
  if (other.unit.quantity === 'level' && readsPlainDecibels.has(expected.quantity)) return { kind: 'unit', unit: expected };
  return { kind: 'other', unit: other.unit };
}

const settled = (reading: UnitReading, text: string): UnitMatch =>
  reading.rival === null
    ? { kind: 'unit', unit: reading.unit }
    : { kind: 'ask', message: messages.eitherPrefix(text, reading.unit, reading.rival) };

/** "2.2k", "470u", "2 kilo": a prefix and no unit belongs to the unit expected. */
function barePrefix(token: string, expected: Unit): UnitMatch | null {
  const base = expected.base;
  if (base === null) return null;
  const word = token.toLowerCase();
  const spelt = prefixes.find((prefix) => prefix.word === word || (prefix.letter === 'M' && word === 'meg'));
  if (spelt !== undefined && base.prefixes.includes(spelt.letter)) return { kind: 'unit', unit: prefixed(base, spelt) };
  if (token.length !== 1) return null;
  const prefix: Prefix | null = prefixOf(token, base);
  if (prefix === null || 'cdh'.includes(prefix.letter)) return null;
  const unclear = rivalPrefix(prefix, base, base.symbol === 'Ω') !== null;
  return unclear ? { kind: 'ask', message: messages.prefixAlone(token, expected) } : { kind: 'unit', unit: prefixed(base, prefix) };
}
