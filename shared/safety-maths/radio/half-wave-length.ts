import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** The length of a half-wave wire, five per cent short for a real wire: L = 143 / f in m (468 / f in feet). Frequency in MHz; length in m. Source: antenna practice, no published standard. */
export const halfWaveLength = calculation({
  id: 'half-wave-length',
  title: 'Length of a half-wave wire',
  topic: 'radio',
  formula: 'L = 143 / f',
  inputs: { frequency: quantity('frequency', 'MHz', { min: 0.1, max: 3000 }) },
  outputs: { length: 'm' },
  sources: ['wire', 'light'],
  caution: 'line',
  checks: [],
  work({ frequency }) {
    const length = 143 / frequency;
    return {
      result: { length },
      steps: [
        'Half a wavelength is 150 / f metres, f in megahertz; a real wire is about five per cent shorter: L = 143 / f.',
        `L = 143 / ${put(frequency, '')} = ${out(length, 'm')}`,
        `That is about ${out(length / 0.3048, 'ft')}.`,
      ],
    };
  },
});
