import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** mg/m³, over 8 h and over 15 min. Source: EH40, as SIM 03/2002/26 gives them. */
const [longTerm, shortTerm] = [0.05, 0.15] as const;
const multiple = { min: 0, max: 1000 };

/**
 * The British workplace limits for rosin-based flux fume, and what a number of times those limits comes to: c = n × limit. Without numbers:
 * the 50 and 30 times that were found where nothing drew the fume off. Limits and results in mg/m³. Source: EH40; SIM 03/2002/26; RR900.
 */
export const solderFumeLimit = calculation({
  id: 'solder-fume-limit',
  title: 'Limits for solder fume',
  topic: 'workshop',
  formula: 'c = n × c_limit',
  inputs: {
    times_long_term_limit: optional(quantity('times the 8 hour limit', '', multiple)),
    times_short_term_limit: optional(quantity('times the 15 minute limit', '', multiple)),
  },
  outputs: { long_term_8h: 'mg/m³', short_term_15min: 'mg/m³', long_term: 'mg/m³', short_term: 'mg/m³' },
  sources: ['fluxFume', 'fumeStudy'],
  validity: 'Fume of rosin (colophony) flux, averaged over 8 h or 15 min; somebody already sensitised can react far below.',
  foundBy: ['flux fumes', 'rosin', 'colophony', 'soldering smoke', 'solder asthma'],
  regionDependence: 'limits of the United Kingdom; other countries set others',
  caution: 'solder',
  checks: ['workplace exposure limit for rosin solder flux fume', 'uncontrolled soldering exposure found by HSE'],
  work({ times_long_term_limit: longTimes = 50, times_short_term_limit: shortTimes = 30 }) {
    const [long, short] = [longTimes * longTerm, shortTimes * shortTerm];
    return {
      result: { long_term_8h: longTerm, short_term_15min: shortTerm, long_term: long, short_term: short },
      steps: [
        `Limits: ${put(longTerm, 'mg/m³')} over 8 hours, ${put(shortTerm, 'mg/m³')} over 15 minutes.`,
        `${put(longTimes, '')} times the 8 hour limit: c = ${put(longTimes, '')} × ${put(longTerm, 'mg/m³')} = ${out(long, 'mg/m³')}`,
        `${put(shortTimes, '')} times the 15 minute limit: c = ${put(shortTimes, '')} × ${put(shortTerm, 'mg/m³')} = ${out(short, 'mg/m³')}`,
        'More than 50 and 30 times were found where nothing drew the fume off: take it away at the tip, keep your face out of it.',
      ],
    };
  },
});
