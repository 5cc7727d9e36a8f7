import { calculation } from '../calculation.js';
import { list } from '../inputs.js';
import { out, put } from '../working.js';

/** The level of several sounds at once: L = 10 log10(Σ 10^(L_i / 10)). Levels in dB(A). Source: energies add; ISO 9613-2. */
export const sumOfSoundLevels = calculation({
  id: 'sum-of-sound-levels',
  title: 'Several noises at once',
  topic: 'noise',
  formula: 'L = 10 × log10(10^(L₁ / 10) + 10^(L₂ / 10) + …)',
  inputs: { levels: list('sound level of each', 'dB(A)', { min: 0, max: 160 }) },
  outputs: { level: 'dB(A)' },
  sources: ['soundLevels'],
  validity: 'Noises that have nothing to do with each other, measured at the same place; two of the same tone can add to more, or to less.',
  foundBy: ['add decibels', 'two generators', 'two noises together', 'sum of decibels', 'fans and radios'],
  caution: 'noise',
  checks: ['sum of two levels'],
  work({ levels }) {
    const level = 10 * Math.log10(levels.reduce((sum, each) => sum + 10 ** (each / 10), 0));
    const terms = levels.map((each) => `10^(${put(each, '')} / 10)`).join(' + ');
    return {
      result: { level },
      steps: [
        'Decibels do not add; the energies behind them do.',
        `L = 10 × log10(${terms}) = ${out(level, 'dB(A)')}`,
        'Two alike make 3 dB more than one; 3 dB more halves the time that is allowed.',
      ],
    };
  },
});
