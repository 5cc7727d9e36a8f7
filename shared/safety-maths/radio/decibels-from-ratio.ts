import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** A power ratio in decibels: G = 10 × log₁₀(r). Ratio as a plain number above 0; gain in dB. Source: IEC 60027-3. */
export const decibelsFromRatio = calculation({
  id: 'decibels-from-ratio',
  title: 'Power ratio into decibels',
  topic: 'radio',
  formula: 'G = 10 × log₁₀(r)',
  inputs: { ratio: quantity('power ratio, second power over first', '', { min: 1e-20, max: 1e20 }) },
  outputs: { gain: 'dB' },
  sources: ['decibel'],
  validity: 'Power ratios only; for two voltages across equal resistances the 10 becomes 20.',
  foundBy: ['times to dB', 'double the power', 'ratio of two powers', 'logarithm'],
  caution: 'rf',
  checks: ['dB from power ratio'],
  work({ ratio }) {
    const gain = 10 * Math.log10(ratio);
    return {
      result: { gain },
      steps: [
        'Decibels are ten times the common logarithm of the power ratio: G = 10 × log₁₀(r).',
        `G = 10 × log₁₀(${put(ratio, '')}) = ${out(gain, 'dB')}`,
        gain < 0 ? 'Below nought: a loss.' : 'A gain, or no change when it is nought.',
      ],
    };
  },
});
