import { calculation } from '../calculation.js';
import { choice } from '../inputs.js';
import { put } from '../working.js';

/** Daily or weekly exposure in dB(A), peak in dB(C). Source: Control of Noise at Work Regulations, regulation 4. */
const values = {
  'lower exposure action value': {
    daily: 80,
    peak: 135,
    meaning: 'From here on an employer must give information and offer hearing protection.',
  },
  'upper exposure action value': {
    daily: 85,
    peak: 137,
    meaning: 'From here on an employer must lower the noise and see that hearing protection is worn.',
  },
  'exposure limit value': {
    daily: 87,
    peak: 140,
    meaning: 'Nobody at work may be above it; here, and only here, what hearing protection keeps out may be taken off.',
  },
} as const;

/** The levels at which British workplace law asks for something to be done. Daily exposure in dB(A), peak in dB(C). Source as above. */
export const ukNoiseValues = calculation({
  id: 'uk-noise-values',
  title: 'Noise values of British workplace law',
  topic: 'noise',
  formula: 'values of regulation 4',
  inputs: { value: choice('value', Object.keys(values) as (keyof typeof values)[]) },
  outputs: { daily: 'dB(A)', peak: 'dB(C)' },
  sources: ['ukNoise'],
  validity: 'Grown-ups at work in Great Britain and Northern Ireland; it is no advice for leisure, for children or for weekly listening.',
  foundBy: ['how loud is too loud', 'noise law', 'hearing protection', 'ear defenders', '85 decibels'],
  regionDependence: 'United Kingdom; the European Union has the same values, North America has others',
  caution: 'noise',
  checks: ['UK noise values'],
  work({ value }) {
    const { daily, peak, meaning } = values[value];
    return {
      result: { daily, peak },
      steps: [
        `The ${value}: ${put(daily, 'dB(A)')} over the day or week, ${put(peak, 'dB(C)')} at the peak.`,
        meaning,
        'These are values for work; at leisure, set the level as low as you can follow.',
      ],
    };
  },
});
