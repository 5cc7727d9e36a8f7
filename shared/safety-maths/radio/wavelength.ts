import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** Speed of light in vacuum, m/s, exact. Source: SI Brochure, 9th edition. */
export const speedOfLight = 299_792_458;

/** The wavelength in free space: λ = c / f. Frequency in MHz; wavelength in m. Source: SI Brochure. */
export const wavelength = calculation({
  id: 'wavelength',
  title: 'Wavelength',
  topic: 'radio',
  formula: 'λ = c / f',
  inputs: { frequency: quantity('frequency', 'MHz', { min: 0.001, max: 300_000 }) },
  outputs: { wavelength: 'm' },
  sources: ['light'],
  validity: 'Free space and, near enough, air; in a cable or along an insulated wire the wavelength is shorter.',
  foundBy: ['metres from megahertz', '300 divided by frequency', 'lambda', 'which band'],
  caution: 'rf',
  checks: ['wavelength'],
  work({ frequency }) {
    const length = speedOfLight / (frequency * 1e6);
    return {
      result: { wavelength: length },
      steps: [
        'Wavelength is the speed of light over the frequency; in metres and megahertz, about 300 / f.',
        `λ = 299.8 / ${put(frequency, '')}`,
        `λ = ${out(length, 'm')}`,
      ],
    };
  },
});
