import { describe, expect, it } from 'vitest';
import { readQuantity } from '../../../shared/numeric-answer/parse.js';

/**
 * What people really type, and what a careful examiner takes it to mean. Common practice, no source: written down by hand before the
 * reader was run on it. Texts are separated by " | "; a text that needs a space or a sign nobody can see stands in the list of its own.
 */
const taken: readonly (readonly [unit: string, value: number, texts: string])[] = [
  ['A', 13, '13 | 13 A | 13A | 13A. | 13 a | 13 amps | 13 Amps | 13 AMPS | 13 amp | 13 amperes | 13 Ampères | 13-amp | 13 A d.c.'],
  ['A', 13, 'approx 13 amps | approx. 13 A | about 13 | c. 13 A | ca 13 A | roughly 13A | ~13 A | ≈13 | 13 A approx | 13ish | 13 A or so'],
  ['A', 13, 'I = 13 A | I=13 | current = 13 A | I = V/R = 13 A | Answer: 13 A | ans 13 | The answer is 13 amps | it’s 13 | I think 13'],
  ['A', 13, '13 A I think | 13 A? | 13 A! | (13 A) | [13] | "13 A" | “13 A” | =13 A | 13 A DC | 13A rms | 13 amp fuse | 13 A each'],
  [
    'A',
    13,
    '13.0 | 13,0 | 13.00 A | +13 | plus 13 | 13e0 | 1.3e1 | 1.3 x 10^1 | 1.3×10¹ A | 13000 mA | 13 000 mA | 13,000.0 mA | 0.013 kA',
  ],
  ['A', 13, '１３Ａ | １３ | 13 А | 13 АMP | ١٣ | ۱۳ A | १३ | 1️⃣3️⃣ A'],
  [
    'A',
    0.5,
    '0.5 | .5 | ,5 | 0,5 | 0,500 | ½ | 1/2 | 500 mA | 500mA | 500 ma | 500 milliamps | 500 milli-amps | 5e-1 | 5×10⁻¹ A | 00.5 | ٠٫٥',
  ],
  ['A', 5, '5 | 5. | 5.A | +5 | 5,0 | ５ | 5amps'],
  ['A', 0.003, '3×10⁻³ A | 3*10^-3 | 3 mA | 3e-3 | 3.0 mA | 3000 µA | 3000 uA | 3000 microamps | 3 m A'],
  ['A', -2, 'minus 2 | −2 A | negative 2 A | - 2 | –2 | about minus 2'],
  ['mA', 30, '30 | 30 mA | 30ma | 30 milliamps | 0.03 A | 0,03 A | 3 x 10^-2 A | 30000 µA'],
  [
    'W',
    1500,
    '1500 | 1500W | 1.5 kW | 1.5kw | 1.5 KW | 1.5 Kw | 1,5 kW | 1k5 | 1K5 | 1k5 W | 1.5k | 1.5 kilowatts | 1.5 kilo watts | 1½ kW',
  ],
  ['W', 1500, "1 1/2 kW | 1 500 W | 1'500 W | 1’500 | 1_500 | 1,500.0 | 1.500,0 | 1.5e3 | 1.5E+3 | 1.5x10^3 | 1.5 × 10³ W | 15 x 10²"],
  ['W', 1500, '0.0015 MW | 1500000 mW | 1 and a half kW | P = 1.5 kW | 1500 watts PEP | 1 500,0'],
  ['W', 1000, '1 kW | 10^3 | 10³ W | 1e3 | 1E+3 | 1 kilowatt | 1,000.0 | 1 000'],
  ['W', 5000, '5 x 10^3 | 5 × 10^3 W | 5*10**3 | 5·10³ | 5 times 10^3 | 5E3W'],
  ['W', 0.25, '1/4 W | ¼W | 250 mW | 0.25 | 0.25 watts | 1/4 watt'],
  ['W', 1234.5, '1,234.5 | 1.234,5 | 1 234,5 | 1 234.5 | 1234,5 | 1’234.5'],
  [
    'V',
    230,
    '230 | 230V | 230 v | 230 volts | 230 Volts AC | 230 V ac | 230Vac | 230 V~ | 0.23 kV | 230.0 | 2.3e2 | 230 V rms | U = 230 V | V: 230',
  ],
  ['V', 13.8, '13.8 | 13,8 V | 13V8 | 13.8 V dc | 13.8VDC | 13.8 Vdc | 13800 mV | 69/5'],
  ['ohm', 1500, '1500 Ω | 1500Ω | 1500 ohm | 1500 Ohms | 1500 ω | 1k5 | 1K5 | 1.5k | 1.5kΩ | 1.5 kohm | 1.5kohm | 1.5 kilohms | 1.5 k ohm'],
  ['ohm', 1500, '1.5 kilo-ohm | 1k5 ohm | 1500R | 1.5 kR | 0.0015 MΩ | 0.0015 megohm | 1500 \u2126 | 1.5 K | 1,5 kΩ | 1,500.0 ohms'],
  ['ohm', 0.1, '0.1 | R10 | 0R1 | 100 mΩ | 100mohm | 100 milliohms | 1/10 ohm | .1Ω'],
  ['ohm', 2.2e6, '2M2 | 2.2 M | 2.2 MΩ | 2.2 Meg | 2.2 megohm | 2.2Mohm'],
  ['milliohm', 5, '5 | 5 mΩ | 5mΩ | 5 mohm | 5 milliohm | 5 milli | 0.005 Ω | 0.005 ohm | 0R005 | 5000 µΩ'],
  [
    'h',
    2.5,
    '2.5 | 2.5h | 2,5 h | 2.5 H | 2.5 hrs | 2.5 hours | 2½ | 2 ½ h | 2½ hours | 2 1/2 h | 5/2 | 150 min | 150 mins | 150 minutes | 9000 s',
  ],
  [
    'h',
    2.5,
    '2 and a half | 2 and a half hours | 2 & a half hours | 2 and 1/2 hours | 2 h 30 min | 2h30 | 2 h 30 | 2hr30 | 2h30m | 2h 30m',
  ],
  ['h', 2.5, '2h30min | 2 hours and 30 minutes | 2 hrs, 30 mins | 2 hours 30 | t = 2 h 30 min'],
  ['h', 1 / 3, '1/3 | 1/3 h | ⅓ hour | 20 min | 0h20'],
  ['h', 4.25, '4 and a quarter | 4 and a quarter hours | 4¼ h | 4h15'],
  ['h', 4.75, '4 and three quarters | 4 and three-quarter hours | 4 and 3/4 h | 4¾'],
  ['min', 90, '90 | 90 min | 90mins | 90 minutes | 90 Min | 1.5 h | 1h30 | 1 h 30 min | 1½ hours | 5400s | 1 and a half hours'],
  ['s', 0.3, '300 ms | 300ms | .3 s | 0.3 secs | 0.3 seconds | 300 msec | 300 MS | 3×10⁻¹ s'],
  ['Wh', 60, '60 | 60 Wh | 60 wh | 60WH | 60 W h | 60 W·h | 60 watt hours | 60 watt-hours | 0.06 kWh | 0.06 kwh | 0.06 KWH | 216 kJ'],
  ['Ah', 7, '7 | 7Ah | 7 ah | 7 amp hours | 7 A-h | 7 A.h | 7000 mAh | 7000 mah | 7000 MAH'],
  ['mm²', 2.5, '2.5 | 2,5 | 2.5mm2 | 2.5 mm^2 | 2.5 mm² | 2.5 sq mm | 2.5 sqmm | 2.5 sq.mm | 2.5 square mm | 2.5 square millimetres | 2½'],
  ['mm²', 2.5, '2.5 square millimeters | 2.5 millimetres squared | 2.5 mm sq | 2.5 mm sq. | 2.5 MM2 | 2.5MM² | 0.025 cm2'],
  ['J', 0.5, '0.5 | 0.5 J | .5J | 0.5 joules | 500 mJ | 0.5 Ws | 0.5 W s | 0.5 joule | 0.0005 kJ | ½ J | 5e-1'],
  ['microfarad', 470, '470 | 470 µF | 470µF | 470 μF | 470uF | 470 uf | 470 UF | 470 mfd | 470 MFD | 470 microfarads | 470 micro farads'],
  ['microfarad', 470, '470u | 470µ | 0.47 mF | 0.00047 F | 470000 nF | 4.7 x 10^-4 F'],
  ['m', 1.5, '1.5 | 1.5m | 1,5 m | 1.5 M | 1.5 metres | 1.5 meters | 1.5 metre | 1.5mtrs | 150cm | 150 cms | 150 CM | 1500 mm | 1500 mms'],
  ['m', 1.5, '1500MM | 1m50 | 1 m 50 | 1 m 50 cm | 1m 50cm | 1½ m | 1 1/2 metres | 1 and a half metres | 1 and a half | 0.0015 km | 1.5 м'],
  ['m', 1.6764, "5'6\" | 5' 6\" | 5’6” | 5′6″ | 5'6 | 5ft6 | 5 ft 6 | 5 ft 6 in | 5ft 6ins | 5 foot 6 inches | 5 foot 6 | 5'6''"],
  ['m', 1.6764, '5 feet and 6 inches | 66" | 66 inches | 5.5ft | 5½ ft'],
  ['m', 1.8288, "6ft | 6 ft | 6' | 6 foot | 6 feet | 2 yds"],
  ['m', 1.8923, '6\' 2 1/2" | 6 ft 2½ in'],
  ['ft', 10, '10 | 10ft | 10 ft. | 10\' | 10 feet | 10 foot | 120 in | 120" | 120 inches | 3.048 m | 304.8 cm'],
  ['ft', 6.5, '6\'6" | 6 ft 6 | 6 and a half feet | 78 inches'],
  ['km', 3, '3 | 3km | 3 KM | 3 Km | 3 kms | 3 kilometres | 3 kilometers | 3000 m | 3k'],
  ['km', 1.609344, '1 mile | 1 mi | 1.609344 km'],
  ['degree', 75, '75 | 75° | 75 ° | 75 deg | 75deg | 75 degs | 75 degrees | 75 Degrees | 75º | 75˚ | 75 deg.'],
  ['dBm', -3, '-3 | −3 dBm | -3dBm | minus 3 dBm | minus 3 | – 3 dBm | -3 dbm | -3 DBM | -33 dBW | negative 3 dBm | ﹣3'],
  ['dBm', 37, '37 | 37 dBm | 7 dBW | +37 dBm | 37 dB m'],
  ['W/m²', 2, '2 | 2 W/m² | 2W/m2 | 2 w/m2 | 2 W/m^2 | 2 W / m² | 2 W per m² | 2 W/sq m | 2 W/sq.m | 2 W/sqm | 2 W per sq metre'],
  ['W/m²', 2, '2 W per sq. metre | 2 watts per square metre | 2 watts per square meter | 2 watts per metre squared | 2 Wm-2 | 2 W m⁻²'],
  ['W/m²', 2, '2 W·m⁻² | 0.2 mW/cm2 | 0.2 mW/cm² | 2000 mW/m²'],
  [
    'V/m',
    28,
    '28 | 28 V/m | 28V/m | 28 v/m | 28 V m-1 | 28 Vm⁻¹ | 28 V·m⁻¹ | 28 volts per metre | 28 volts/metre | 28 V per m | 28 volt/meter',
  ],
  ['V/m', 28, '28 V/M | 0.028 kV/m | 28 V / m'],
  ['%', 50, '50 | 50% | 50 % | 50 per cent | 50 percent | 50 pct | 50pct. | 50 pc | 50％ | ٥٠٪'],
  ['%', 0.5, '0.5 | 0.5 % | ½ % | 1/2 %'],
  ['dB(A)', 85, '85 | 85 dB(A) | 85dB(A) | 85 dBA | 85dba | 85 DBA | 85 dB A | 85 dB | 85 db | 85 decibels | 85 dB a'],
  ['MHz', 145, '145 | 145 MHz | 145MHz | 145 Mhz | 145 MHZ | 145 mhz | 145mhz | 145 megahertz | 145 mega hertz | 145 meg | 145000 khz'],
  ['MHz', 145, '0.145 GHz | 0.145 ghz | 145M'],
  ['', 3, '3 | 3 times | 3x | 3.0 | 300 %'],
];

const refused: readonly (readonly [reason: string, unit: string, texts: string])[] = [
  ['no-number', 'A', 'six | none | ? | 😀 | nothing | dunno | two and a half | n/a | A | amps | zero | - | . | , | π | x | half an amp'],
  ['no-number', 'h', 'half an hour | a quarter of an hour | an hour and a half | two and a half hours'],
  ['no-number', 'm', 'half a metre | six foot'],
  ['wrong-kind', 'A', '5 V | 13 kg | 13 bananas | £3 | €3 | 3 € | $3 | 0.5e | 13 W | 13 A/h | 13 VA | 13 👍 | 13 Ah'],
  ['wrong-kind', 'ohm', '2.2 m | 5 V'],
  ['wrong-kind', 'min', "90'"],
  ['wrong-kind', 'Wh', '60 W | 60 W/h | 5 Ah'],
  ['wrong-kind', 'mm²', '2.5 mm | 10 AWG | 2.5 mil'],
  ['wrong-kind', 'm', '6ft2 | 1.5 m2 | 3 kilos | 75°'],
  ['wrong-kind', 'degree', '75 dgrees | 75 °C | 1.3 m'],
  ['wrong-kind', 'dBm', '5 W | 37 dB'],
  ['wrong-kind', 'W/m²', '2 W/m | 2 W | 28 V/m'],
  ['wrong-kind', 'V/m', '28 V | 28 A/m'],
  ['wrong-kind', 'dB(A)', '85 dB(C) | 85 dBm'],
  ['ambiguous', 'A', '1,234 | 13,000 A | 30 MA | #13 | A13 | approx.5 | c.5 | O.5 | mains 13 A | 👍 13 | a 13'],
  ['ambiguous', 'W', '5 mw | 5 Mw | 5 M | 500,000'],
  ['ambiguous', 'W/m²', '.2 mw/cm2'],
  ['ambiguous', 'ohm', '2.2 MOHM'],
  ['ambiguous', 'J', '500 mj'],
  ['ambiguous', 'microfarad', '470 MF'],
  ['ambiguous', 'MHz', '145 mHz'],
  ['ambiguous', 'h', '2:30 | 2:05 h | 90 m'],
  ['ambiguous', 'min', '1:30 | 90 m | 90m'],
  ['ambiguous', 'm', '1m5'],
  ['ambiguous', '', 'x3'],
  [
    'not-one-number',
    'A',
    '13 A or 5 A | 13-14 | about 13-14 | 13 to 14 A | 13–14 A | ±2 | 13 ± 1 | >5 | < 5 A | ≥5 | <=5 | >= 5 A | I < 5 A',
  ],
  [
    'not-one-number',
    'A',
    'at most 13 A | max 13 A | 13 A max | 13 A maximum | 13 A or less | up to 13 | 13/14/15 | 13, 14 | 13 + 2 | 2 x 6.5',
  ],
  ['not-one-number', 'A', '13 A 14 A | 5x103 | 5x10-3 | 5.10^3 | 10^3.5 | 1.2.3 | 1..5 | 1 23 | 4-1/2 | 3+j4 | 13 A (3 kW) | 3000/230=13'],
  ['not-one-number', 'A', '13 A = 13000 mA | 13 A at 230 V | 4.5 and a half'],
  ['not-one-number', 'h', '1.5 hours (90 min) | 1.5 h 30 min | 2 h 75 min | 2h75 | 2h5 | 30 min 2 h'],
  ['not-one-number', 'm', "1 m (39 in) | 1 m 39 in | 6 ft (1.83 m) | 1 m 150 cm | 5'600 | 5'13 | 1 m 5"],
  ['out-of-range', 'A', '1e999 | 1/0 | 4 1/0 | ∞ | 10^400'],
];

const unseen: readonly (readonly [text: string, unit: string, outcome: number | string])[] = [
  ['', 'A', 'empty'],
  [' \t\r\n', 'A', 'empty'],
  ['\u0000', 'A', 'empty'],
  ['\u200f', 'A', 'empty'],
  ['13\u0000A', 'A', 13],
  ['1\u00003', 'A', 'not-one-number'],
  ['\u200f13 A', 'A', 13],
  ['\u202a13 A\u202c', 'A', 13],
  // A sign that turns the order of what follows: the page would show 31.
  ['\u202e13 A', 'A', 'ambiguous'],
  ['13\u00a0A', 'A', 13],
  ['13\tA\n', 'A', 13],
  ['\ufeff13', 'A', 13],
  ['A'.repeat(200), 'A', 'no-number'],
  ['1'.repeat(200), 'A', 'out-of-range'],
  [`${'I worked it out in my head and '.repeat(6)}got 13 A`, 'A', 'not-one-number'],
  ['😀'.repeat(100), 'A', 'no-number'],
];

const rows = <T extends number | string>(list: readonly (readonly [T | string, T | string, string])[]) =>
  list.flatMap(([first, second, texts]) => texts.split(' | ').map((text) => [text, first, second] as const));

describe('the spellings people use', () => {
  it.each(rows(taken))('%j, asked in %j, is %d', (text, unit, value) => {
    const reading = readQuantity(text, String(unit));
    expect(reading.understood ? Math.abs(reading.value / Number(value) - 1) < 1e-12 : reading).toBe(true);
  });

  it.each(rows(refused))('%j is refused as %s when asked in %j', (text, reason, unit) => {
    const reading = readQuantity(text, unit);
    expect(reading.understood ? `read as ${reading.value}` : reading.reason).toBe(reason);
  });

  it.each(unseen)('%j, asked in %j, gives %j', (text, unit, outcome) => {
    const reading = readQuantity(text, unit);
    expect(reading.understood ? reading.value : reading.reason).toBe(outcome);
  });

  it('are a fair number', () => {
    expect(rows(taken).length + rows(refused).length + unseen.length).toBeGreaterThan(500);
  });
});
