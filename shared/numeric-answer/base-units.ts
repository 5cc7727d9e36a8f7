import type { QuantityId } from './quantities.js';

/**
 * The units people write the quantities of this syllabus in, and the prefixes.
 *
 * Factors are exact where the unit is defined exactly: BIPM, The International System of Units, 9th edition (2019), tables 4, 5, 7 and 8,
 * and for feet, inches, pounds and the like NIST Special Publication 811 (2008), appendix B.8.
 */

/** A unit without prefix, as the table below holds it. */
export interface BaseUnit {
  readonly quantity: QuantityId;
  /** As printed. */
  readonly symbol: string;
  /** In the plural, in small letters. */
  readonly name: string;
  /** Value in the coherent SI unit = (value + offset) × factor × 10^exponent. Levels have no SI unit and stay in their own. */
  readonly factor: number;
  readonly exponent: number;
  readonly offset: number;
  /** Spellings in which capitals count, and spellings in which they do not. */
  readonly symbols: readonly string[];
  readonly words: readonly string[];
  /** Prefix letters it takes. */
  readonly prefixes: string;
  /** Which of m (milli) and M (mega) is in sensible use with it; the other is asked about, since they differ a thousand-million-fold. */
  readonly sensible: 'm' | 'M' | 'mM';
  /**
   * Which of the two nobody ever uses with it here. Somebody who types the whole unit without its capitals ("mhz") or all in capitals
   * ("MAH") does not write prefixes with care, and means the other. '' where both occur, or where the word may be right as it stands.
   */
  readonly never: '' | 'm' | 'M';
}

type More = Partial<Pick<BaseUnit, 'factor' | 'exponent' | 'offset' | 'prefixes' | 'sensible' | 'never'>> & {
  symbols?: string;
  words?: string;
};

const unit = (quantity: QuantityId, symbol: string, name: string, more: More = {}): BaseUnit => ({
  quantity,
  symbol,
  name,
  factor: more.factor ?? 1,
  exponent: more.exponent ?? 0,
  offset: more.offset ?? 0,
  symbols: (more.symbols ?? symbol).split(' ').filter((spelling) => spelling !== ''),
  words: [name.toLowerCase().replace(/[ -]/g, ''), ...(more.words ?? '').split(' ')].filter((word) => word !== ''),
  prefixes: more.prefixes ?? '',
  sensible: more.sensible ?? 'm',
  never: more.never ?? '',
});

/** Prefixes of an ordinary electrical unit. */
const si = 'pnumkMG';

export const baseUnits: readonly BaseUnit[] = [
  unit('voltage', 'V', 'volts', { prefixes: si, words: 'volt' }),
  unit('current', 'A', 'amperes', { prefixes: si, words: 'ampere amp amps' }),
  unit('power', 'W', 'watts', { prefixes: si, sensible: 'mM', words: 'watt' }),
  unit('apparent-power', 'VA', 'volt-amperes', { prefixes: si, sensible: 'M', words: 'voltampere voltamperes voltamp voltamps' }),
  unit('resistance', 'Ω', 'ohms', { prefixes: si, sensible: 'mM', symbols: 'Ω ohm Ohm ohms Ohms R', words: 'ohm' }),
  unit('charge', 'C', 'coulombs', { prefixes: si, words: 'coulomb' }),
  unit('charge', 'Ah', 'ampere-hours', {
    factor: 3600,
    prefixes: si,
    never: 'M',
    words: 'amperehour amperehours amphour amphours ahr amphr amphrs',
  }),
  unit('energy', 'J', 'joules', { prefixes: si, sensible: 'mM', symbols: 'J Ws', words: 'joule wattsecond wattseconds' }),
  unit('energy', 'Wh', 'watt-hours', { factor: 3600, prefixes: si, sensible: 'mM', words: 'watthour watthours whr whrs watthr watthrs' }),
  unit('capacitance', 'F', 'farads', { prefixes: si, words: 'farad' }),
  unit('capacitance', 'µF', 'microfarads', { exponent: -6, symbols: 'uF', words: 'mfd' }),
  unit('inductance', 'H', 'henries', { prefixes: si, words: 'henry henrys' }),
  unit('frequency', 'Hz', 'hertz', { prefixes: si, sensible: 'M', never: 'm' }),
  unit('length', 'm', 'metres', { prefixes: `${si}cd`, never: 'M', words: 'metre meter meters mtr mtrs' }),
  unit('length', 'ft', 'feet', { factor: 0.3048, symbols: "ft '", words: 'foot ft' }),
  unit('length', 'in', 'inches', { factor: 0.0254, symbols: 'in "', words: 'inch ins' }),
  unit('length', 'yd', 'yards', { factor: 0.9144, words: 'yard yds' }),
  unit('length', 'mile', 'miles', { factor: 1609.344, symbols: 'mile mi', words: 'mile' }),
  unit('volume', 'L', 'litres', { exponent: -3, prefixes: 'mcd', symbols: 'L l', words: 'litre liter liters' }),
  unit('time', 's', 'seconds', { prefixes: 'pnumk', never: 'M', words: 'second sec secs' }),
  unit('time', 'min', 'minutes', { factor: 60, words: 'minute mins' }),
  unit('time', 'h', 'hours', { factor: 3600, words: 'hour hr hrs' }),
  unit('time', 'd', 'days', { factor: 86400, words: 'day' }),
  unit('angle', '°', 'degrees', { factor: Math.PI / 180, words: 'degree deg degs' }),
  unit('angle', 'rad', 'radians', { words: 'radian rads' }),
  unit('temperature', 'K', 'kelvins', { words: 'kelvin' }),
  unit('temperature', '°C', 'degrees Celsius', {
    offset: 273.15,
    symbols: '°C C',
    words: 'degc degreec degreesc celsius degreecelsius degreescelsius centigrade',
  }),
  unit('temperature', '°F', 'degrees Fahrenheit', {
    offset: 459.67,
    factor: 5 / 9,
    symbols: '°F F',
    words: 'degf degreef degreesf fahrenheit degreesfahrenheit',
  }),
  unit('ratio', '', '', { symbols: 'x', words: 'times' }),
  unit('ratio', '%', 'per cent', { exponent: -2, words: 'percent pct pc' }),
  unit('ratio', 'ppm', 'parts per million', { exponent: -6 }),
  unit('level', 'dB', 'decibels', { words: 'decibel' }),
  unit('gain', 'dBi', 'decibels over an isotropic antenna'),
  unit('gain', 'dBd', 'decibels over a dipole', { offset: 2.15 }),
  unit('power-level', 'dBm', 'decibels over a milliwatt'),
  unit('power-level', 'dBW', 'decibels over a watt', { offset: 30 }),
  unit('sound-level', 'dB(A)', 'A-weighted decibels', { symbols: 'dBA' }),
  unit('sound-level-c', 'dB(C)', 'C-weighted decibels', { symbols: 'dBC' }),
  unit('flux-density', 'T', 'teslas', { prefixes: 'pnum', words: 'tesla' }),
  unit('speed', 'mph', 'miles an hour', { factor: 0.44704 }),
  unit('speed', 'km/h', 'kilometres an hour', { factor: 1 / 3.6, symbols: 'kmh kph' }),
  unit('rotation', 'rpm', 'revolutions a minute', { factor: (2 * Math.PI) / 60, symbols: 'rpm r/min rev/min' }),
  unit('mass', 'g', 'grams', { exponent: -3, prefixes: 'pnumk', words: 'gram gramme grammes' }),
  unit('mass', 'kg', 'kilograms', { words: 'kilo kilos kgs' }),
  unit('mass', 't', 'tonnes', { exponent: 3, words: 'tonne' }),
  unit('mass', 'lb', 'pounds', { factor: 0.45359237, words: 'pound lbs' }),
  unit('mass', 'oz', 'ounces', { factor: 0.028349523125, words: 'ounce' }),
  unit('pressure', 'Pa', 'pascals', { prefixes: `${si}h`, sensible: 'M', words: 'pascal' }),
  unit('pressure', 'bar', 'bars', { exponent: 5, prefixes: 'm' }),
  unit('pressure', 'psi', 'pounds per square inch', { factor: 6894.757293168 }),
  unit('force', 'N', 'newtons', { prefixes: si, words: 'newton' }),
  unit('force', 'kgf', 'kilograms-force', { factor: 9.80665 }),
  unit('force', 'lbf', 'pounds-force', { factor: 4.4482216152605 }),
];

export interface Prefix {
  readonly letter: string;
  readonly symbol: string;
  readonly word: string;
  readonly exponent: number;
}

/** SI prefixes (BIPM, table 7) that occur in this subject. */
export const prefixes: readonly Prefix[] = [
  { letter: 'p', symbol: 'p', word: 'pico', exponent: -12 },
  { letter: 'n', symbol: 'n', word: 'nano', exponent: -9 },
  { letter: 'u', symbol: 'µ', word: 'micro', exponent: -6 },
  { letter: 'm', symbol: 'm', word: 'milli', exponent: -3 },
  { letter: 'c', symbol: 'c', word: 'centi', exponent: -2 },
  { letter: 'd', symbol: 'd', word: 'deci', exponent: -1 },
  { letter: 'h', symbol: 'h', word: 'hecto', exponent: 2 },
  { letter: 'k', symbol: 'k', word: 'kilo', exponent: 3 },
  { letter: 'M', symbol: 'M', word: 'mega', exponent: 6 },
  { letter: 'G', symbol: 'G', word: 'giga', exponent: 9 },
];
