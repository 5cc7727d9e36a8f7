import { describe, expect, it } from 'vitest';
import { readQuantity } from '../../../shared/numeric-answer/parse.js';
import { describeReading } from '../../../shared/numeric-answer/describe.js';

/** Every expectation in this file was written down by hand before the reader was run on it. */
const understood = (text: string, expected: string): number | string => {
  const reading = readQuantity(text, expected);
  return reading.understood ? reading.value : `${reading.reason}: ${reading.message}`;
};
const refusal = (text: string, expected: string): string => {
  const reading = readQuantity(text, expected);
  return reading.understood ? `read as ${reading.value}` : reading.reason;
};

const spellings: Record<string, Record<string, readonly string[]>> = {
  W: {
    '500': [
      '500',
      '500W',
      '500 W',
      '500 w',
      '500 watts',
      '500 Watt',
      '500 WATTS',
      '0.5 kW',
      '0.5kw',
      '0.5 KW',
      '0,5 kW',
      '.5 kW',
      ',5 kW',
      '500000 mW',
      '0.0005 MW',
    ],
    '2200': [
      '2.2 kW',
      '2,2kW',
      '2k2',
      '2k2W',
      '2.2k',
      '2.2 kilowatts',
      '2.2 kilo-watts',
      '2.2 kilo watt',
      '2.2e3',
      '2.2E+3 W',
      '2.2 x 10^3',
      '2.2×10³ W',
      '2.2 * 10**3',
      '22 × 10²',
      '0.22·10^4',
      '2 200 W',
      '2\u202f200 W',
      "2'200 W",
      '2_200',
    ],
    '1000': ['10^3', '10³ W', '1 kW', '1 kilo'],
    '12345': ['12 345', '12\u00a0345 W'],
    '1234567': ['1,234,567', '1.234.567', '1 234 567', '12,34,567'],
    '1234.5': ['1,234.5', '1.234,5', '1 234.5', '1 234,5', '1234,5'],
    '100': ['100 W PEP', '100 W pep', '100 watts EIRP', '100 W e.r.p.', '100 W each', '100 W in total'],
  },
  A: {
    '5': [
      '5',
      '5 A',
      '5A',
      '5 a',
      '5 amp',
      '5 amps',
      '5 Amperes',
      '5 ampere',
      '5000 mA',
      '5000 ma',
      '5 A d.c.',
      '5 A dc',
      '5 A rms',
      '5-amp',
      '+5 A',
      '5.',
      '5. ',
      '5 A.',
      '(5 A)',
      '5 (A)',
      '５ Ａ',
      '5.0',
    ],
    '0.03': [
      '30 mA',
      '30mA',
      '30 milliamps',
      '30 milliamperes',
      '30 milli amps',
      '0.03',
      '0,03',
      '3e-2',
      '3 × 10⁻² A',
      '30000 µA',
      '30000 μA',
      '30000 uA',
    ],
    '-5': ['-5', '−5 A', '–5 A', '- 5 A', '－５'],
  },
  V: {
    '230': [
      '230 V',
      '230 volts',
      '230 Vac',
      '230 V a.c.',
      '230 v AC',
      '230 Vrms',
      '0.23 kV',
      'V = 230 V',
      'V=230',
      '= 230',
      'voltage: 230 V',
      'approx 230 V',
      'approx. 230 V',
      'about 230',
      '~230 V',
      '≈ 230',
      'It is 230 V',
      "it's 230 V",
      '230 V approx.',
      'U1 = 230 V',
    ],
    '3.3': ['3V3', '3.3 V', '3300 mV', '3300 millivolts'],
    '325': ['325 V peak', '325 Vpk'],
  },
  ohm: {
    '4700': [
      '4k7',
      '4K7',
      '4k7Ω',
      '4k7 ohms',
      '4.7k',
      '4.7 K',
      '4.7 kΩ',
      '4.7 k\u2126',
      '4.7 kilohm',
      '4.7 kilohms',
      '4.7 kohm',
      '4.7kR',
      '4700R',
      '4700 Ω',
      '4700 \u2126',
      '4700 ohm',
      '4.7 ㏀',
    ],
    '4.7': ['4R7', '4r7', '4.7R', '4.7 Ohm', '4Ω7'],
    '0.47': ['R47', '0R47', '470 mΩ', '470 milliohms', '470 mohm'],
    '1500000': ['1M5', '1.5M', '1.5 MΩ', '1.5 Mohm', '1.5 megohms', '1.5 meg', '1.5 megaohm'],
  },
  Ah: {
    '7': [
      '7 Ah',
      '7 ah',
      '7 AH',
      '7 A h',
      '7 A·h',
      '7 amp hours',
      '7 amp-hours',
      '7 ampere-hours',
      '7000 mAh',
      '7000 mah',
      '7000 milliamp hours',
      '25200 C',
      '25200 coulombs',
    ],
  },
  Wh: { '84': ['84 Wh', '84 W h', '84 watt hours', '84 watt-hours', '0.084 kWh', '0.084 kilowatt-hours', '302400 J', '302.4 kJ'] },
  F: {
    '0.00047': ['470 µF', '470uF', '470 mfd', '470 microfarads', '470u', '0.47 mF'],
    '0.0000000047': ['4n7', '4.7 nF', '4700 pF', '4700p'],
  },
  H: { '0.00001': ['10 µH', '10uH', '10 microhenries', '10u'] },
  MHz: {
    '145': ['145', '145 MHz', '145MHz', '145 Mhz', '145 megahertz', '145000 kHz', '0.145 GHz', '145M'],
    '14.2': ['14.2', '14M2', '14,2 MHz'],
  },
  m: {
    '1.5': [
      '1.5',
      '1.5 m',
      '1.5m',
      '1.5 metres',
      '1.5 meters',
      '1.5 mtr',
      '150 cm',
      '1500 mm',
      '0.0015 km',
      '1½',
      '1 1/2 m',
      '3/2',
      '1m50',
    ],
    '1.6764': [
      '5 ft 6 in',
      '5\' 6"',
      '5’ 6”',
      '5ft 6in',
      '5 feet 6 inches',
      '5 foot and 6 inches',
      "5'6''",
      '5.5 ft',
      '66 in',
      '66"',
      '5½ ft',
      '5 1/2 feet',
    ],
    '1.2': ['1 m 20 cm', '1.2 m'],
  },
  'mm²': {
    '2.5': [
      '2.5',
      '2.5 mm²',
      '2.5mm2',
      '2.5 mm^2',
      '2.5 sq mm',
      '2.5 sq. mm',
      '2.5 square mm',
      '2.5 square millimetres',
      '2.5 mm squared',
      '2.5 mm sq',
      '0.025 cm²',
      '2.5 ㎟',
    ],
  },
  h: {
    '1.5': [
      '1.5',
      '1.5 h',
      '1.5 hrs',
      '1.5 hours',
      '1½ hours',
      '1 1/2 h',
      '90 min',
      '90 mins',
      '90 minutes',
      '1 h 30 min',
      '1 hour, 30 minutes',
      '5400 s',
      '5400 sec',
    ],
  },
  s: { '0.3': ['300 ms', '0.3 s', '300 milliseconds', '.3 seconds'] },
  degree: { '75': ['75', '75°', '75 °', '75º', '75˚', '75 deg', '75 degrees', '75 Degree'] },
  '°C': {
    '20': ['20', '20 °C', '20°C', '20 ℃', '20 C', '20 deg C', '20 degrees Celsius', '20°', '20 degrees', '68 °F', '68 F', '293.15 K'],
  },
  '%': { '50': ['50', '50%', '50 %', '50 per cent', '50 percent', '50 pct', '50％'] },
  '': { '0.5': ['0.5', '1/2', '½', '50 %', '0.5 times'] },
  dB: { '3': ['3', '3 dB', '3dB', '3 db', '3 DB', '3 decibels'] },
  dBi: { '6': ['6', '6 dBi', '6 dbi', '6 dB', '3.85 dBd'] },
  dBm: { '37': ['37', '37 dBm', '37dbm', '7 dBW'] },
  'dB(A)': { '85': ['85', '85 dB(A)', '85 dBA', '85 dba', '85 dB (A)', '85 dB A', '85 dB'] },
  'W/m²': {
    '10': [
      '10',
      '10 W/m²',
      '10 W/m2',
      '10 W/m^2',
      '10 W m⁻²',
      '10 W m-2',
      '10 W per m²',
      '10 watts per square metre',
      '10 watts/sq m',
      '1 mW/cm²',
      '1000 µW/cm²',
    ],
  },
  'V/m': { '28': ['28', '28 V/m', '28 v/m', '28 V m⁻¹', '28 volts per metre', '28 volts/meter', '28000 mV/m'] },
  'A/m': { '0.073': ['0.073 A/m', '73 mA/m', '0.073 amps per metre'] },
  'ohm/km': { '1.91': ['1.91 ohm/km', '1.91 Ω/km', '1.91 ohms per kilometre', '1.91 mΩ/m', '1.91 mV/A/m'] },
  'ohm/1000 ft': { '0.9989': ['0.9989', '0.9989 ohm/1000 ft', '0.9989 ohms per 1000 feet'] },
  km: { '3': ['3', '3 km', '3 KM', '3000 m', '3 kilometers'] },
  kg: { '10': ['10 kg', '10 Kg', '10 kgs', '10 kilos', '10 kilo', '10 kilograms', '10000 g'] },
  bar: { '2': ['2 bar', '2 bars', '200 kPa', '2000 mbar', '0.2 MPa'] },
};
const table = Object.entries(spellings).flatMap(([unit, values]) =>
  Object.entries(values).flatMap(([value, texts]) => texts.map((text) => [text, unit, Number(value)] as const)),
);

describe('reading a typed quantity', () => {
  it.each(table)('takes %j, %s expected, as %d', (text, unit, value) => {
    expect(understood(text, unit)).toBe(value);
  });

  it.each([
    ['0.5 kW', 'W', { value: 500, si: 500, unit: 'W', typed: { number: 0.5, unit: 'kW' } }],
    ['500', 'W', { value: 500, si: 500, unit: 'W', typed: { number: 500, unit: null } }],
    ['500', 'kW', { value: 500, si: 500000, unit: 'kW', typed: { number: 500, unit: null } }],
    ['90 min', 'h', { value: 1.5, si: 5400, unit: 'h', typed: { number: 90, unit: 'min' } }],
    ['20', '°C', { value: 20, si: 293.15, unit: '°C', typed: { number: 20, unit: null } }],
    ['37 dBm', 'dBm', { value: 37, si: 37, unit: 'dBm', typed: { number: 37, unit: 'dBm' } }],
    ['4k7', 'kilohm', { value: 4.7, si: 4700, unit: 'kilohm', typed: { number: 4.7, unit: 'kΩ' } }],
    ['5.5 mm2', 'mm²', { value: 5.5, si: 0.0000055, unit: 'mm²', typed: { number: 5.5, unit: 'mm²' } }],
  ])('gives value, SI value and what was typed for %j', (text, unit, expected) => {
    expect(readQuantity(text, unit)).toEqual({ understood: true, ...expected });
  });

  it.each(['0.1 mA', '0.7 kW', '1.1 µF', '3.3 mV', '0.3 MHz'])('loses no accuracy to the prefix of %s', (text) => {
    const [digits = '', unit = ''] = text.split(' ');
    const power = { m: -3, k: 3, µ: -6, M: 6 }[unit.charAt(0)] ?? 0;
    expect(understood(text, unit.slice(1))).toBe(Number(`${digits}e${power}`));
  });

  const refused: Record<string, readonly (readonly [string, string])[]> = {
    empty: [
      ['', 'A'],
      ['   ', 'A'],
      ['\u00a0\u200b\t\n', 'A'],
      ['()', 'A'],
    ],
    'no-number': [
      ['abc', 'A'],
      ['five amps', 'A'],
      ['W', 'W'],
      ['kW', 'W'],
      ['?', 'A'],
      ['-', 'A'],
      ['.', 'A'],
      ['I do not know', 'A'],
      ['😀', 'A'],
      ['e', 'A'],
      ['a'.repeat(70), 'A'],
    ],
    'wrong-kind': [
      ['5 m', 'W'],
      ['5m', 'A'],
      ['5 m', 'ohm'],
      ['5 Ah', 'A'],
      ['5 A', 'Ah'],
      ['5 W', 'Wh'],
      ['5 Wh', 'W'],
      ['230 V', 'A'],
      ['2.5 mm', 'mm²'],
      ['2.5 mm²', 'm'],
      ['5 VA', 'W'],
      ['40 dBm', 'W'],
      ['10 W', 'dBm'],
      ['37 dB', 'dBm'],
      ['37 dBm', 'dB'],
      ['6 dBi', 'dB'],
      ['85 dBA', 'dB'],
      ['5 %', 'A'],
      ['5 A', ''],
      ['4R7', 'V'],
      ['10 V/m', 'V'],
      ['10 V', 'V/m'],
      ['20 °C', 'degree'],
      ['5 bananas', 'A'],
      ['5 wats', 'W'],
      ['5 £', 'A'],
      ['£5', 'A'],
      ['5 h', 'm'],
      ['5 Pa', 'A'],
      ['3 V/A', 'ohm'],
    ],
    ambiguous: [
      ['1,234', 'W'],
      ['12,345', 'W'],
      ['999,000 W', 'W'],
      ['1,000', 'A'],
      ['5 m', 'min'],
      ['5 m', 'h'],
      ['5 m', 's'],
      ['5 M', 'W'],
      ['10 MA', 'A'],
      ['10 MAh', 'Ah'],
      ['12 MV', 'V'],
      ['5 mw', 'W'],
      ['5 Mw', 'W'],
      ['10 MOHM', 'ohm'],
      ['145 mHz', 'MHz'],
      ['2:30', 'h'],
      ['1m5', 'm'],
      ['470 MF', 'F'],
      ['20°', 'K'],
      ['1,23.4', 'W'],
      ['1.2,3.4', 'W'],
      ['W 500', 'W'],
      ['--5', 'A'],
      ['I reckon 5', 'A'],
    ],
    'not-one-number': [
      ['5 6', 'A'],
      ['5 to 6', 'A'],
      ['5-6', 'A'],
      ['5–6 A', 'A'],
      ['5 or 6', 'A'],
      ['5, 6', 'A'],
      ['5;6', 'A'],
      ['5 A 6 A', 'A'],
      ['1,2,3', 'A'],
      ['1.2.3', 'A'],
      ['12.34.567', 'A'],
      ['1,2345,678', 'A'],
      ['5 ± 1', 'A'],
      ['±5', 'A'],
      ['<5', 'A'],
      ['> 5 A', 'A'],
      ['≤5', 'A'],
      ['at least 5', 'A'],
      ['less than 5 A', 'A'],
      ['between 5 and 6', 'A'],
      ['5 or more', 'A'],
      ['2 x 3', 'A'],
      ['2+3', 'A'],
      ['230/13.8', 'A'],
      ['1/2/3', 'A'],
      ['1e3e3', 'A'],
      ['5²', 'A'],
      ['0x10', 'A'],
      ['1:4', ''],
      ['6 in 5 ft', 'm'],
      ['5 ft -6 in', 'm'],
      ['2300/230 = 10 A', 'A'],
      ['5 600/2', 'A'],
      ['1234 567', 'W'],
    ],
    'out-of-range': [
      ['1e400', 'W'],
      ['-1e400', 'W'],
      ['1e308 kW', 'W'],
      ['1e-400', 'W'],
      ['1e-330 W', 'W'],
      ['NaN', 'W'],
      ['Infinity', 'W'],
      ['-infinity', 'W'],
      ['inf', 'W'],
      ['∞', 'W'],
      ['1/0', 'A'],
      ['1 1/0', 'A'],
      [`1${'0'.repeat(70)}`, 'A'],
      ['10^999', 'W'],
    ],
  };
  it.each(Object.entries(refused).flatMap(([reason, texts]) => texts.map(([text, unit]) => [text, unit, reason] as const)))(
    'refuses %j, %s expected, as %s',
    (text, unit, reason) => {
      expect(refusal(text, unit)).toBe(reason);
    },
  );

  it('takes 64 characters and refuses 65', () => {
    expect(understood(`0.${'0'.repeat(60)}5 `.slice(0, 64).replace(/ $/, ''), 'W')).toBe(5e-61);
    expect(refusal(`0.${'0'.repeat(62)}5`, 'W')).toBe('out-of-range');
    expect(understood(`5 W${' '.repeat(100)}`, 'W')).toBe(5);
  });

  it('reads nought, and a nought with a minus sign as nought', () => {
    expect(understood('0', 'A')).toBe(0);
    expect(Object.is(understood('-0', 'A'), 0)).toBe(true);
    expect(understood('0.000 mA', 'A')).toBe(0);
  });

  it('asks which was meant, naming both, and prefers neither', () => {
    const comma = readQuantity('1,234', 'W');
    expect(comma.understood ? '' : comma.message).toBe(
      '“1,234” can be read as 1234 or as 1.234. Type it without the comma: 1234, or 1.234 with a point.',
    );
    const prefix = readQuantity('10 MA', 'A');
    expect(prefix.understood ? '' : prefix.message).toContain('megaamperes (MA) or milliamperes (mA)');
  });

  it('names both kinds when the unit is of another kind', () => {
    const reading = readQuantity('5 Ah', 'A');
    expect(reading.understood ? '' : reading.message).toBe(
      '“Ah” is an electric charge or battery capacity in ampere-hours, and this answer is a current, in amperes (A). Type the number alone, or with A.',
    );
  });

  it('says so when the unit expected does not exist', () => {
    expect(refusal('5', 'furlongs')).toBe('wrong-kind');
  });

  it.each([
    ['0.5 kW', 'W', 'read as 0.5\u202fkW = 500\u202fW'],
    ['500', 'W', 'read as 500\u202fW'],
    ['500 W', 'W', 'read as 500\u202fW'],
    ['1234567', 'W', 'read as 1\u202f234\u202f567\u202fW'],
    ['1/3', 'A', 'read as 0.333333\u202fA'],
    ['−5', '°C', 'read as −5\u202f°C'],
    ['75 deg', 'degree', 'read as 75°'],
    ['50 %', '', 'read as 50\u202f% = 0.5'],
    ['5 ft 6 in', 'm', 'read as 5.5\u202fft = 1.6764\u202fm'],
    ['', 'A', 'Nothing is typed yet. Type one number in amperes (A).'],
  ])('shows %j, %s expected, as %j', (text, unit, shown) => {
    expect(describeReading(readQuantity(text, unit))).toBe(shown);
  });
});
