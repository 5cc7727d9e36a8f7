import { calculation } from '../calculation.js';
import { choice, quantity } from '../inputs.js';
import { fccLimits } from './fcc-table.js';
import { limitsAt, publicStep } from './limit-bands.js';

/**
 * The FCC's limits for a frequency. Frequency in MHz, 0.3 to 100 000; electric field in V/m, magnetic field in A/m, power density in W/m²,
 * null where the rule sets none. Source: 47 CFR 1.1310, table 1.
 */
export const fccExposureLimits = calculation({
  id: 'fcc-exposure-limits',
  title: 'FCC exposure limits at a frequency',
  topic: 'exposure',
  formula: 'row of 47 CFR 1.1310, table 1',
  inputs: {
    frequency: quantity('frequency', 'MHz', { min: 0.3, max: 100_000 }),
    category: choice('who is exposed', ['general population', 'occupational']),
  },
  outputs: { electric_field: 'V/m', magnetic_field: 'A/m', power_density: 'W/m²' },
  sources: ['fccLimits'],
  validity:
    'United States; averages over 30 minutes for the general population and 6 minutes for trained workers; below 30 MHz the power density is that of a plane wave with such a field, so both fields count.',
  rule: 'FCC; most other countries follow ICNIRP',
  foundBy: ['FCC limit', 'MPE', 'maximum permissible exposure', 'how strong may the field be', 'limit for my band'],
  regionDependence: 'United States rules; elsewhere ICNIRP or national limits hold',
  caution: 'rf',
  checks: ['FCC power-density limit', 'FCC field-strength limits'],
  work({ frequency, category }) {
    const { result, steps } = limitsAt(fccLimits[category], frequency);
    const minutes = category === 'occupational' ? 6 : 30;
    return { result, steps: [...steps, `These are averages over ${minutes} minutes. ${publicStep}`] };
  },
});
