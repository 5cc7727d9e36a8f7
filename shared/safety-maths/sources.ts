/** Where each calculation stands. `basis` says how the project knows it. */
export interface MathsSource {
  readonly id: string;
  readonly title: string;
  readonly publisher: string;
  readonly year: number | null;
  /** Clause, table or edition. */
  readonly where: string;
  /** read: the text was read; read-secondary: read where others quote it; computed: worked out here from the formula; common-practice: no published source. */
  readonly basis: 'read' | 'read-secondary' | 'computed' | 'common-practice' | 'memory';
}

const source = (
  id: string,
  title: string,
  publisher: string,
  year: number | null,
  where: string,
  basis: MathsSource['basis'],
): MathsSource => ({
  id,
  title,
  publisher,
  year,
  where,
  basis,
});

export const mathsSources = {
  si: source(
    'si',
    'The International System of Units (SI Brochure)',
    'BIPM',
    2019,
    '9th edition: definitions of joule, watt, volt, ohm, coulomb',
    'computed',
  ),
  light: source('light', 'The International System of Units (SI Brochure)', 'BIPM', 2019, '9th edition: c = 299 792 458 m/s', 'computed'),
  powerFactor: source('power-factor', 'IEC 60050-131: power factor', 'IEC', 2002, '131-11-46', 'computed'),
  sine: source('sine', 'Peak of a sine wave is √2 times its r.m.s. value', 'any physics text', null, 'alternating current', 'computed'),
  bs1362: source(
    'bs1362',
    'BS 1362 General purpose fuse links for domestic and similar purposes',
    'BSI',
    1973,
    'listed ratings',
    'read-secondary',
  ),
  breakers: source('mcb', 'IEC 60898-1 Circuit-breakers for household installations', 'IEC', 2015, 'listed ratings', 'memory'),
  branch: source('nec', 'NFPA 70: 15 A and 20 A branch circuits', 'NFPA', 2023, '240.6(A)', 'read-secondary'),
  rule700: source(
    '700-watt',
    'The 700 W rule: 3 A up to 700 W, 13 A above',
    'appliance-testing and home-safety guidance',
    null,
    'three independent pages',
    'read-secondary',
  ),
  body: source(
    'iec60479',
    'IEC 60479-1 Effects of current on human beings and livestock',
    'IEC',
    1994,
    'table 1, total body impedance',
    'read-secondary',
  ),
  iec60228: source(
    'iec60228',
    'IEC 60228 Conductors of insulated cables',
    'IEC',
    2004,
    'class 5, greatest resistance at 20 °C',
    'read-secondary',
  ),
  capacitor: source('capacitor', 'College Physics', 'OpenStax', 2015, 'chapters 19 and 21: E = ½ C V², t = R C ln(V₀/V)', 'computed'),
  ladder: source(
    'indg455',
    'Safe use of ladders and stepladders: a brief guide (LA455, INDG455)',
    'Ladder Association with HSE',
    2021,
    'the 1 in 4 rule, about 75°',
    'read-secondary',
  ),
  triangle: source('triangle', 'Right-triangle trigonometry', 'any mathematics text', null, 'Pythagoras and tangent', 'computed'),
  landing: source('hseladder', 'Securing ladders and ladders used for access', 'HSE', null, 'at least 1 m above the landing', 'read'),
  fall: source(
    'fall',
    'Keep a mast at least its full height, antenna included, from any line',
    'club custom',
    null,
    'none',
    'common-practice',
  ),
  wire: source(
    'wire',
    'A half-wave of real wire is about five per cent short: 143 / f metres, 468 / f feet',
    'antenna practice',
    null,
    'none',
    'common-practice',
  ),
  decibel: source('decibel', 'IEC 60027-3: the decibel; dBm is referred to 1 mW', 'IEC', 2002, 'definition', 'computed'),
  dipole: source(
    'dipole',
    'A half-wave dipole has 2.15 dB over an isotropic antenna',
    'antenna texts, ITU-R usage',
    null,
    'definition',
    'read-secondary',
  ),
  oet65: source(
    'oet65',
    'Evaluating Compliance with FCC Guidelines for Human Exposure to RF Electromagnetic Fields (OET Bulletin 65)',
    'FCC',
    1997,
    'section 2',
    'read-secondary',
  ),
  lightning: source(
    'lightning',
    'Flash-to-bang timing in public lightning advice',
    'several public bodies',
    null,
    'three seconds to the kilometre, five to the mile',
    'read-secondary',
  ),
  sound: source('sound', 'Speed of sound in air, about 343 m/s at 20 °C', 'handbook of physics', null, 'value', 'computed'),
  niosh: source(
    'niosh',
    'Noise exposure limits and time to reach 100 % dose (criteria document 98-126)',
    'NIOSH',
    1998,
    '85 dB(A) for 8 h, halved for each 3 dB',
    'read-secondary',
  ),
  equalEnergy: source(
    'njc',
    'Occupational Health and Safety Directive: greatest time of exposure to noise',
    'National Joint Council, Canada',
    null,
    '87 dB(A) for 8 h, equal energy',
    'read',
  ),
  osha: source('osha', '29 CFR 1910.95, table G-16', 'OSHA', 1983, '90 dB(A) for 8 h, halved for each 5 dB', 'read-secondary'),
} as const satisfies Record<string, MathsSource>;

export type MathsSourceKey = keyof typeof mathsSources;
