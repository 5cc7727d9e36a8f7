import { calculation } from '../calculation.js';
import { choice, quantity } from '../inputs.js';
import { local2020 } from './icnirp-table.js';
import { limitsAt, nerveSteps, publicStep } from './limit-bands.js';

/**
 * ICNIRP 2020 reference levels for a part of the body. Frequency in MHz, 0.1 to 300 000; electric field in V/m, magnetic field in A/m,
 * power density in W/m², null where the table sets none. Source: ICNIRP 2020, Health Physics 118:483, table 6.
 */
export const icnirp2020Local = calculation({
  id: 'icnirp-2020-local',
  title: 'ICNIRP 2020 limits for a part of the body',
  topic: 'exposure',
  formula: 'row of ICNIRP 2020, table 6',
  inputs: {
    frequency: quantity('frequency', 'MHz', { min: 0.1, max: 300_000 }),
    category: choice('who is exposed', ['general public', 'occupational']),
  },
  outputs: { electric_field: 'V/m', magnetic_field: 'A/m', power_density: 'W/m²' },
  sources: ['icnirp2020Local'],
  validity:
    'Average over 6 minutes, at a part of the body; the lower levels for the whole body hold as well, and up to 10 MHz those for nerves, so this one alone shows nothing safe.',
  rule: 'ICNIRP 2020, local exposure',
  foundBy: ['hand near antenna', 'local exposure', 'six minute limit', 'hand-held radio limit'],
  regionDependence: 'international guidelines; the national regulator says which limits hold, and the FCC has its own',
  caution: 'rf',
  checks: ['ICNIRP 2020 local reference level, 6 min'],
  work({ frequency, category }) {
    const { result, steps } = limitsAt(local2020[category], frequency);
    return {
      result,
      steps: [
        ...steps,
        ...nerveSteps(frequency),
        `These are averages over 6 minutes, for a part of the body; the lower levels for the whole body hold as well. ${publicStep}`,
      ],
    };
  },
});
