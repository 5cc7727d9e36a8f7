import { source } from './source.js';
import type { MathsSource } from './source.js';

const thirty = 'The 30-30 rule: shelter at 30 s or less between flash and bang; wait 30 min after the last thunder';
const handling = 'Manual handling guidelines: repetition, twisting, carrying, pushing and pulling';

/** Sources of soldering, burns, lightning and lifting. */
export const workshopSources = {
  fluxFume: source(
    'flux-fume',
    'Short and intermittent exposure to rosin-based solder flux fume (SIM 03/2002/26) and EH40',
    'HSE',
    2002,
    'paragraph 3: workplace exposure limits',
    'read',
  ),
  fumeStudy: source(
    'rr900',
    'RR900 Visualisation and control of solder fume exposure',
    'HSE',
    null,
    'summary: more than 50 and 30 times the limits',
    'computed',
  ),
  solderTip: source(
    'solder-tip',
    'Soldering iron tip temperature, technical answer',
    'soldering training company’s question column',
    null,
    '63/37 melts at 183 °C; tip 343 °C to 398 °C',
    'read-secondary',
  ),
  solderSac305: source(
    'sac305',
    'Sn96.5Ag3.0Cu0.5: solid up to 217 °C, liquid from 220 °C',
    'alloy data (J-STD-006)',
    null,
    '217 °C and 220 °C',
    'memory',
  ),
  solder6040: source(
    'sn60pb40',
    'Tin-lead solders: temperatures of solid and liquid',
    'solder maker’s page on the phase diagram',
    null,
    'row 60/40: 183 °C and about 190 °C',
    'read-secondary',
  ),
  fahrenheit: source(
    'fahrenheit',
    'Guide for the Use of the International System of Units (SP 811)',
    'NIST',
    2008,
    'appendix B.8: t_C = (t_F − 32) / 1.8',
    'computed',
  ),
  burnTime: source(
    'burn-time',
    'Time to serious burn against temperature (chart of which the poster did not know the origin)',
    'product-safety mailing list',
    1999,
    'table of eight rows',
    'read-secondary',
  ),
  touchShort: source(
    'astm-c1055',
    'ASTM C1055 Guide for heated system surface conditions that produce contact burn injuries',
    'ASTM',
    null,
    '60 °C for 5 s, as another page quotes it',
    'read-secondary',
  ),
  touchLong: source(
    'iso13732-1',
    'EN ISO 13732-1 (and EN 563) burn thresholds, long contact',
    'CEN and ISO',
    2006,
    'table 1: 1 min 51 °C, 10 min 48 °C, 8 h 43 °C',
    'memory',
  ),
  thirtyThirty: source('30-30', thirty, 'lightning-safety guidance (several pages restating it)', null, 'rule', 'read-secondary'),
  soundRound: source('sound-round', 'Speed of sound in air, about 340 m/s at 15 °C', 'handbook of physics', null, 'value', 'computed'),
  liftingFilter: source(
    'indg143',
    'Manual handling at work: a brief guide (INDG143)',
    'HSE',
    2020,
    'lifting filter figure, ten zones each for men and women',
    'memory',
  ),
  handlingRules: source(
    'l23-figures',
    handling,
    'local copy of HSE L23 and INDG143 guideline figures',
    null,
    'paragraphs 2.4, 3.1, 4.1, 5.1',
    'read-secondary',
  ),
} as const satisfies Record<string, MathsSource>;
