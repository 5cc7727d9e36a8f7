import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** Decibels as a power ratio: r = 10^(G / 10). Gain in dB, a loss with a minus sign; ratio as a plain number. Source: IEC 60027-3. */
export const ratioFromDecibels = calculation({
  id: 'ratio-from-decibels',
  title: 'Decibels into a power ratio',
  topic: 'radio',
  formula: 'r = 10^(G / 10)',
  inputs: { gain: quantity('gain (a loss with a minus sign)', 'dB', { min: -200, max: 200 }) },
  outputs: { ratio: '' },
  sources: ['decibel'],
  validity: 'Power ratios only; the ratio of two voltages across equal resistances is 10^(G / 20).',
  foundBy: ['3 dB is double', 'numeric gain', 'antilog', 'how many times', 'dB to times'],
  caution: 'rf',
  checks: ['numeric gain from dB'],
  work({ gain }) {
    const ratio = 10 ** (gain / 10);
    return {
      result: { ratio },
      steps: [
        'Every 10 dB is ten times the power, and 3 dB is about double: r = 10^(G / 10).',
        `r = 10^(${put(gain, '')} / 10) = ${out(ratio, '')}`,
        ratio < 1 ? 'Below one: the power gets less.' : 'The power is this many times as much.',
      ],
    };
  },
});
