import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** A level as a power: P = 1 mW × 10^(L / 10). Level in dBm; power in W. Source: IEC 60027-3. */
export const wattsFromDbm = calculation({
  id: 'watts-from-dbm',
  title: 'dBm into watts',
  topic: 'radio',
  formula: 'P = 1 mW × 10^(L / 10)',
  inputs: { level: quantity('power level', 'dBm', { min: -200, max: 120 }) },
  outputs: { power: 'W' },
  sources: ['decibel'],
  validity: 'Any level; a level of a receiver and one of a transmitter use the same sum.',
  foundBy: ['dbm to watts', 'milliwatts', '30 dBm', 'microwave amplifier power'],
  caution: 'rf',
  checks: ['power from dBm'],
  work({ level }) {
    const milliwatts = 10 ** (level / 10);
    return {
      result: { power: milliwatts / 1000 },
      steps: [
        'Every 10 dB is ten times the power, counted from one milliwatt: P = 1 mW × 10^(L / 10).',
        `P = 10^(${put(level, '')} / 10) mW = ${out(milliwatts, 'mW')}`,
        `P = ${out(milliwatts / 1000, 'W')}`,
      ],
    };
  },
});
