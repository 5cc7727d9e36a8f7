import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The length of a half-wave wire, five per cent short for a real wire: L = 143 / f in m, 468 / f in feet; each rule is rounded by itself.
 * Frequency in MHz; lengths in m and ft. Source: antenna practice, no published standard.
 */
export const halfWaveLength = calculation({
  id: 'half-wave-length',
  title: 'Length of a half-wave wire',
  topic: 'radio',
  formula: 'L = 143 / f',
  inputs: { frequency: quantity('frequency', 'MHz', { min: 0.1, max: 3000 }) },
  outputs: { length: 'm', length_feet: 'ft' },
  sources: ['wire', 'light'],
  validity: 'A thin bare wire, high and in the clear; insulation, nearby things and low height change it, so cut long and trim.',
  rule: 'Half a wavelength less about five per cent; the figure differs a little from text to text',
  foundBy: ['dipole length', '143 divided by frequency', '468', 'antenna wire length', 'half-wave dipole'],
  caution: 'line',
  checks: [],
  work({ frequency }) {
    const length = 143 / frequency;
    const feet = 468 / frequency;
    return {
      result: { length, length_feet: feet },
      steps: [
        'Half a wavelength is 150 / f metres, f in megahertz; a real wire is about five per cent shorter: L = 143 / f.',
        `L = 143 / ${put(frequency, '')} = ${out(length, 'm')}`,
        `The rule in feet: L_ft = 468 / ${put(frequency, '')} = ${out(feet, 'ft')}`,
        'Insulators and cords come on top; keep the whole run, and all it could fall on, away from overhead lines.',
      ],
    };
  },
});
