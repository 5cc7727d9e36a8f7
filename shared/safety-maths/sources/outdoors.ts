import { source } from './source.js';
import type { MathsSource } from './source.js';

const ip = 'IEC 60529 Degrees of protection provided by enclosures (IP Code)';
const reelAdvice = 'Why a cable reel must be fully unwound';
const bs7671 = 'BS 7671 Requirements for Electrical Installations';

/** Sources of cable reels, generators, earth rods and enclosures outdoors. */
export const outdoorsSources = {
  reelPlate: source(
    'reel-plate',
    'Cable reel rating plate: 500 W wound, 2300 W unwound',
    'safety photograph archive',
    2005,
    'photo 3, one reel',
    'read-secondary',
  ),
  reelSum: source('reel-sum', 'Share and currents of a reel from its two plate powers', 'worked out here', null, 'I = P / V', 'computed'),
  reelAdvice: source(
    'reel-advice',
    reelAdvice,
    'reel maker’s advice page',
    null,
    'up to 1000 W wound; cut-out at about 65 °C',
    'read-secondary',
  ),
  reelUsual: source('reel-usual', 'Usual UK 13 A reel: 5 A wound, 13 A unwound', 'rating plates', null, 'none', 'memory'),
  apparentPower: source(
    'apparent-power',
    'Sum of loads against a generator’s rating; apparent power is power over power factor',
    'IEC 60034-1 terms',
    null,
    'definition',
    'computed',
  ),
  generatorMargin: source(
    'generator-margin',
    'Leave a fifth of a generator’s rating free',
    'field-day custom',
    null,
    'none',
    'common-practice',
  ),
  earthRod: source('bs7430', 'BS 7430 Earthing: resistance of a vertical rod', 'BSI', 2011, 'clause 9.5.3', 'memory'),
  ipCode: source('iec60529', ip, 'IEC', 2013, 'first and second numerals, in other pages that agree', 'read-secondary'),
  coLimit: source('eh40-co', 'EH40 workplace exposure limits: carbon monoxide', 'HSE', 2020, 'limits for 8 h and for 15 min', 'memory'),
  outdoorRcd: source(
    'bs7671-rcd',
    `${bs7671}: additional protection of sockets up to 32 A and of mobile equipment outdoors`,
    'IET and BSI',
    2018,
    'regulations 411.3.3 and 415.1',
    'read-secondary',
  ),
} as const satisfies Record<string, MathsSource>;
