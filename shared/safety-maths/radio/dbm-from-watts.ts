import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** A power as a level: L = 10 × log₁₀(P / 1 mW). Power in W, above 0; level in dBm. Source: IEC 60027-3. */
export const dbmFromWatts = calculation({
  id: 'dbm-from-watts',
  title: 'Watts into dBm',
  topic: 'radio',
  formula: 'L = 10 × log₁₀(P / 1 mW)',
  inputs: { power: quantity('power', 'W', { min: 1e-18, max: 1e9 }) },
  outputs: { level: 'dBm' },
  sources: ['decibel'],
  validity: 'Any power above nought; averages and peaks must not be mixed.',
  foundBy: ['dbm', 'milliwatts', 'log of power', 'watts to dbm'],
  caution: 'rf',
  checks: ['power in dBm'],
  work({ power }) {
    const level = 10 * Math.log10(power * 1000);
    return {
      result: { level },
      steps: [
        `Turn watts into milliwatts: ${put(power, 'W')} = ${put(power * 1000, 'mW')}`,
        `L = 10 × log₁₀(${put(power * 1000, '')})`,
        `L = ${out(level, 'dBm')}`,
      ],
    };
  },
});
