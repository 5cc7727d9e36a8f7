import { baseUnits, prefixes } from './base-units.js';
import type { BaseUnit, Prefix } from './base-units.js';
import type { QuantityId } from './quantities.js';

/** A unit as used: with its prefix, squared, or divided by another. Value in SI = (value + offset) × factor × 10^exponent. */
export interface Unit {
  readonly quantity: QuantityId;
  /** As printed: kW, mm², W/m². Empty for a plain number. */
  readonly symbol: string;
  /** In words, plural: kilowatts. */
  readonly name: string;
  readonly factor: number;
  readonly exponent: number;
  readonly offset: number;
  /** The unit without prefix that a bare prefix letter ("2.2k") would belong to; null where none is taken. */
  readonly base: BaseUnit | null;
}

/** One way to read a spelling. */
export interface UnitReading {
  readonly unit: Unit;
  /** Written with the capitals the unit's symbol has. */
  readonly exact: boolean;
  /** The other of milli and mega, when the spelling does not settle which was meant. */
  readonly rival: Unit | null;
}

interface Spelling {
  readonly base: BaseUnit;
  readonly word: boolean;
}

const exactSpellings = new Map<string, Spelling[]>();
const foldedSpellings = new Map<string, Spelling[]>();
const enter = (map: Map<string, Spelling[]>, key: string, spelling: Spelling): void => {
  const list = map.get(key);
  if (list === undefined) map.set(key, [spelling]);
  else if (!list.some((other) => other.base === spelling.base)) list.push(spelling);
};
for (const base of baseUnits) {
  for (const symbol of base.symbols) enter(exactSpellings, symbol, { base, word: false });
  for (const symbol of base.symbols) enter(foldedSpellings, symbol.toLowerCase(), { base, word: false });
  for (const word of base.words) enter(foldedSpellings, word, { base, word: true });
}
const prefixByLetter = new Map(prefixes.map((prefix) => [prefix.letter, prefix]));
const milli = prefixByLetter.get('m') as Prefix;
const mega = prefixByLetter.get('M') as Prefix;

/** A base unit with an SI prefix or none. */
export function prefixed(base: BaseUnit, prefix: Prefix | null): Unit {
  return {
    quantity: base.quantity,
    symbol: `${prefix?.symbol ?? ''}${base.symbol}`,
    name: `${prefix?.word ?? ''}${base.name}`.replace(/[ao]ohm/, 'ohm'),
    factor: base.factor,
    exponent: base.exponent + (prefix?.exponent ?? 0),
    offset: base.offset,
    base: base.prefixes === '' ? null : base,
  };
}

/** All spellings of a token, those with the right capitals first. */
function spellingsOf(token: string): { spelling: Spelling; exact: boolean }[] {
  const folded = token.toLowerCase();
  const found = (exactSpellings.get(token) ?? []).map((spelling) => ({ spelling, exact: true }));
  for (const spelling of foldedSpellings.get(folded) ?? []) {
    if (!found.some((other) => other.spelling.base === spelling.base)) {
      const capitalised = token.slice(1) === folded.slice(1) && folded.length > 2;
      found.push({ spelling, exact: spelling.word && capitalised });
    }
  }
  return found;
}

/** The prefix a letter stands for with this unit; m and M are different letters, for all others capitals do not count. */
export function prefixOf(letter: string, base: BaseUnit): Prefix | null {
  const plain = letter === 'm' || letter === 'M' || letter === 'G' ? letter : letter === 'g' ? 'G' : letter.toLowerCase();
  return base.prefixes.includes(plain) ? (prefixByLetter.get(plain) ?? null) : null;
}

/** What else m or M may mean: the other prefix if that one is in sensible use and the spelling does not settle it. */
export function rivalPrefix(prefix: Prefix, base: BaseUnit, settled: boolean): Prefix | null {
  if (prefix !== milli && prefix !== mega) return null;
  const other = prefix === milli ? mega : milli;
  if (!base.sensible.includes(other.letter)) return null;
  return base.sensible.includes(prefix.letter) && settled ? null : other;
}

/** "145 mhz", "2000 MAH": one kind of letter throughout, in a unit with which only one of milli and mega is ever used. */
function carelessPrefix(token: string, base: BaseUnit): Prefix | null {
  if (base.never === 'm') return token.charAt(0) === 'm' && token === token.toLowerCase() ? mega : null;
  return base.never === 'M' && token.charAt(0) === 'M' && token === token.toUpperCase() ? milli : null;
}

function withPrefixLetter(token: string): UnitReading[] {
  const readings: UnitReading[] = [];
  for (const { spelling, exact } of spellingsOf(token.slice(1))) {
    const careless = exact ? null : carelessPrefix(token, spelling.base);
    const prefix = careless ?? prefixOf(token.charAt(0), spelling.base);
    if (prefix === null) continue;
    const rival = careless === null ? rivalPrefix(prefix, spelling.base, exact) : null;
    readings.push({
      unit: prefixed(spelling.base, prefix),
      exact: exact && prefix.letter === token.charAt(0),
      rival: rival === null ? null : prefixed(spelling.base, rival),
    });
  }
  return readings;
}

const prefixWords: readonly (readonly [string, Prefix])[] = [
  ...prefixes.map((prefix) => [prefix.word, prefix] as const),
  ['meg', mega],
  ['kil', prefixByLetter.get('k') as Prefix],
];

function withPrefixWord(token: string): UnitReading[] {
  const folded = token.toLowerCase();
  for (const [word, prefix] of prefixWords) {
    if (!folded.startsWith(word)) continue;
    const readings = spellingsOf(token.slice(word.length))
      .filter(({ spelling }) => spelling.base.prefixes.includes(prefix.letter))
      .map(({ spelling, exact }) => ({ unit: prefixed(spelling.base, prefix), exact, rival: null }));
    if (readings.length > 0) return readings;
  }
  return [];
}

/** Readings of a unit that is neither squared nor divided. */
export function simpleReadings(token: string): UnitReading[] {
  const whole = spellingsOf(token).map(({ spelling, exact }) => ({ unit: prefixed(spelling.base, null), exact, rival: null }));
  return [...whole, ...withPrefixLetter(token), ...withPrefixWord(token)];
}
