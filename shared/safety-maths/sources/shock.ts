import { source } from './source.js';
import type { MathsSource } from './source.js';

const bs7671 = 'BS 7671 Requirements for Electrical Installations';
const rcd = 'IEC 61008-1 and IEC 61009-1 Residual current operated circuit-breakers';
const iec60479 = 'IEC/TS 60479-1 Effects of current on human beings and livestock, part 1';

/** Sources of electric shock, RCDs, touch voltage and the impedance of a body. */
export const shockSources = {
  rcdTimes: source(
    'rcd-times',
    rcd,
    'IEC',
    2010,
    'tables 1 and 2 at 1 and 5 times the rated current, as manuals of RCD testers quote them',
    'read-secondary',
  ),
  rcdTimesDouble: source('rcd-times-double', rcd, 'IEC', 2010, 'tables 1 and 2 at twice the rated current', 'memory'),
  rcdTestCurrent: source('rcd-test-current', rcd, 'IEC', 2010, 'test current as a multiple of the rated current', 'computed'),
  disconnectionTime: source(
    'bs7671-41-1',
    bs7671,
    'IET and BSI',
    2018,
    'table 41.1 and regulations 411.3.2.3 and 411.3.2.4, in two copies that agree',
    'read-secondary',
  ),
  rcdElectrode: source(
    'bs7671-41-5',
    `${bs7671}: R × I at most 50 V`,
    'IET and BSI',
    2018,
    'table 41.5 and regulation 411.5.3',
    'read-secondary',
  ),
  loopLimit: source('bs7671-41-3', `${bs7671}: Z at most 0.95 × U / I`, 'IET and BSI', 2018, 'table 41.3', 'read-secondary'),
  body700: source('iec479-700', 'IEC 479-1 Effects of current passing through the human body, part 1', 'IEC', 1994, 'row 700 V', 'memory'),
  body2005: source(
    'iec60479-2005',
    iec60479,
    'IEC',
    2005,
    'table 1, total body impedance, hand to hand, dry, large contact area',
    'memory',
  ),
  shockZones: source(
    'iec479-zones',
    'IEC 479, description of the time/current zones',
    'IEC',
    null,
    'table of zones, in a maker’s introduction to electrical engineering',
    'read-secondary',
  ),
  shockThresholds: source(
    'iec60479-2018',
    iec60479,
    'IEC',
    2018,
    'clauses on immobilisation, letting go and ventricular fibrillation',
    'memory',
  ),
  shockSurvey: source(
    'shock-survey',
    'Survey of electric shock data at 50/60 Hz',
    'journal abstract',
    null,
    'abstract: 5 mA safety threshold; 99 % of men release 9 mA',
    'read-secondary',
  ),
  shockOsha: source(
    'osha3075',
    'Controlling Electrical Hazards (OSHA 3075)',
    'OSHA, US Department of Labor',
    2002,
    'effects of 60 Hz current for 1 s',
    'read',
  ),
  shockNiosh: source(
    'niosh-60hz',
    'Estimated effects of 60 Hz alternating currents',
    'NIOSH, as quoted in a medical article',
    2009,
    'table 1',
    'read-secondary',
  ),
  voltageBands: source(
    'voltage-bands',
    'BS 7671, IEC 60364-4-41 and IEC 61140: voltage bands',
    'IET, BSI and IEC',
    2018,
    'definitions of extra-low and low voltage; 414.4.5',
    'read-secondary',
  ),
} as const satisfies Record<string, MathsSource>;
