import { source } from './source.js';
import type { MathsSource } from './source.js';

const gs6 = 'Avoiding danger from overhead power lines (GS6)';
const heightRules = 'Electricity Safety, Quality and Continuity Regulations 2002: minimum height of overhead lines';

/** Sources of ladders, masts and overhead lines. */
export const heightsSources = {
  landingFeet: source(
    'osha1053',
    '29 CFR 1926.1053 Ladders',
    'OSHA',
    null,
    '(b)(1): side rails at least 3 ft above the landing, as a letter quotes it',
    'read-secondary',
  ),
  landingNorway: source(
    'norway-17-23',
    'Regulations concerning the performance of work',
    'Norwegian Labour Inspection Authority',
    null,
    'section 17-23: at least 1 m above the access level',
    'read-secondary',
  ),
  ladderLengths: source(
    'ladder-lengths',
    'Access and egress by portable ladder',
    'regulator-style guidance',
    null,
    'single ladder up to 9 m, step ladder up to 6 m',
    'read-secondary',
  ),
  ladderLoad: source('en131', 'EN 131 Ladders', 'CEN', 2019, 'part 2: greatest total load', 'memory'),
  topRungs: source(
    'indg455-rungs',
    'Safe use of ladders and stepladders (LA455, INDG455)',
    'Ladder Association with HSE',
    2021,
    'do not work off the top three rungs',
    'memory',
  ),
  lineConsult: source(
    'gs6-consult',
    gs6,
    'HSE',
    2013,
    '15 m from steel towers, 9 m from wood poles, as others restate it',
    'read-secondary',
  ),
  lineExclusion: source('gs6-exclusion', gs6, 'HSE', 2013, '4th edition, exclusion distances by voltage', 'memory'),
  lineHeights: source('esqcr-heights', heightRules, 'UK Government', 2002, 'schedule 2 and regulation 17', 'read-secondary'),
  lineHeight66: source('esqcr-66', heightRules, 'UK Government', 2002, 'schedule 2, row of 66 kV', 'memory'),
  lineMultiple: source(
    'cpsc',
    'Antenna and ladder safety advice: keep one and a half times the antenna’s height from a power line',
    'CPSC',
    null,
    'as news pages reproduce it',
    'read-secondary',
  ),
  lineMultipleClub: source(
    'line-multiple-club',
    'Keep an antenna twice its full height from any line',
    'club custom',
    null,
    'none',
    'common-practice',
  ),
  wireSwing: source(
    'wire-swing',
    'A wire that breaks at one end can swing to its full length: keep that and a margin from any line',
    'club custom',
    null,
    'none',
    'common-practice',
  ),
  gravity: source(
    'gravity',
    '3rd General Conference on Weights and Measures: standard acceleration of gravity',
    'BIPM',
    1901,
    'g = 9.80665 m/s²; v = √(2 g h)',
    'computed',
  ),
} as const satisfies Record<string, MathsSource>;
