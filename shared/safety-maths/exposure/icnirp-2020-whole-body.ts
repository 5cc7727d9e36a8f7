import { calculation } from '../calculation.js';
import { choice, quantity } from '../inputs.js';
import { wholeBody2020 } from './icnirp-table.js';
import { limitsAt, nerveSteps, publicStep } from './limit-bands.js';

/**
 * ICNIRP 2020 reference levels for the whole body. Frequency in MHz, 0.1 to 300 000; electric field in V/m, magnetic field in A/m, power
 * density in W/m², null where the table sets none. Source: ICNIRP 2020, Health Physics 118:483, table 5.
 */
export const icnirp2020WholeBody = calculation({
  id: 'icnirp-2020-whole-body',
  title: 'ICNIRP 2020 limits at a frequency',
  topic: 'exposure',
  formula: 'row of ICNIRP 2020, table 5',
  inputs: {
    frequency: quantity('frequency', 'MHz', { min: 0.1, max: 300_000 }),
    category: choice('who is exposed', ['general public', 'occupational']),
  },
  outputs: { electric_field: 'V/m', magnetic_field: 'A/m', power_density: 'W/m²' },
  sources: ['icnirp2020Body', 'icnirp2020BodyMemory'],
  validity:
    'Average over 30 minutes and over the whole body; below 30 MHz both fields must stay within their levels, and the levels for a part of the body, for nerves up to 10 MHz and for currents through limbs hold as well.',
  rule: 'ICNIRP 2020, whole body; the 1998 levels and the FCC differ',
  foundBy: ['ICNIRP limit', 'public limit', '27.7 V/m', 'how strong may the field be', 'limit for my band'],
  regionDependence: 'international guidelines; the national regulator says which limits hold, and the FCC has its own',
  caution: 'rf',
  checks: ['ICNIRP 2020 whole-body reference level, 30 min', 'ICNIRP 2020 whole-body reference level, 30 min (power density)'],
  work({ frequency, category }) {
    const { result, steps } = limitsAt(wholeBody2020[category], frequency);
    return { result, steps: [...steps, ...nerveSteps(frequency), `These are averages over 30 minutes. ${publicStep}`] };
  },
});
