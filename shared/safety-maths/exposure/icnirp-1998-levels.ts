import { calculation } from '../calculation.js';
import { choice, quantity } from '../inputs.js';
import { reference1998 } from './icnirp-table.js';
import { limitsAt, publicStep } from './limit-bands.js';

/**
 * ICNIRP 1998 reference levels. Frequency in MHz, 0.1 to 300 000; electric field in V/m, magnetic field in A/m, power density in W/m²,
 * null where the tables set none. Source: ICNIRP 1998, Health Physics 74:494, tables 6 and 7; fields from memory.
 */
export const icnirp1998Levels = calculation({
  id: 'icnirp-1998-levels',
  title: 'ICNIRP 1998 limits at a frequency',
  topic: 'exposure',
  formula: 'row of ICNIRP 1998, tables 6 and 7',
  inputs: {
    frequency: quantity('frequency', 'MHz', { min: 0.1, max: 300_000 }),
    category: choice('who is exposed', ['general public', 'occupational']),
  },
  outputs: { electric_field: 'V/m', magnetic_field: 'A/m', power_density: 'W/m²' },
  sources: ['icnirp1998Density', 'icnirp1998Fields'],
  validity:
    'Average over 6 minutes up to 10 GHz, above that over a shorter time; ICNIRP replaced these levels in 2020, but laws that cite them stand until they are changed.',
  rule: 'ICNIRP 1998, as in Council Recommendation 1999/519/EC for the public',
  foundBy: ['1999 EU limit', '28 V/m', 'old ICNIRP limit', '1999/519/EC'],
  regionDependence: 'international guidelines; the national regulator says which limits hold, and the FCC has its own',
  caution: 'rf',
  checks: ['ICNIRP 1998 reference level (power density)', 'ICNIRP 1998 reference level (electric field)'],
  work({ frequency, category }) {
    const { result, steps } = limitsAt(reference1998[category], frequency);
    return { result, steps: [...steps, `Up to 10 GHz these are averages over 6 minutes. ${publicStep}`] };
  },
});
