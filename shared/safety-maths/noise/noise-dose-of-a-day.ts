import { calculation } from '../calculation.js';
import { CalculationInputError, list } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The dose of several spells of noise in one day: D = 100 % × Σ t / T, where T = 8 h / 2^((L − 85) / 3) is the time allowed at each level;
 * and the steady level that makes the same dose in eight hours: L_8h = 85 + 10 log10(D / 100 %). Levels in dB(A), times in h; dose in %,
 * level in dB(A). Lists of unlike length, and more than 24 h, are refused. Source: NIOSH 98-126.
 */
export const noiseDoseOfADay = calculation({
  id: 'noise-dose-of-a-day',
  title: 'Noise dose of a whole day',
  topic: 'noise',
  formula: 'D = 100 × (t₁ / T₁ + t₂ / T₂ + …)',
  inputs: {
    levels: list('sound levels, one after another', 'dB(A)', { min: 60, max: 140 }),
    times: list('times at those levels, in the same order', 'h', { min: 0.01, max: 24 }),
  },
  outputs: { dose: '%', equivalent_8h: 'dB(A)' },
  sources: ['niosh'],
  validity: 'Steady spells of noise in one day, each level below 80 dB(A) counted too; sudden bangs can harm at once, whatever the dose.',
  rule: '85 dB(A) for 8 h, halved each 3 dB (some North American workplaces use 5 dB, which allows more)',
  foundBy: ['noise through the day', 'contest weekend', 'several noises', 'total noise exposure'],
  caution: 'noise',
  checks: ['noise dose of several exposures (85 dB, 3 dB exchange)'],
  work({ levels, times }) {
    if (levels.length !== times.length)
      throw new CalculationInputError('times', `${times.length} for ${levels.length} levels; give one time for each level`);
    const day = times.reduce((sum, time) => sum + time, 0);
    if (day > 24) throw new CalculationInputError('times', `${out(day, 'h')} in all is more than a day; give 24 h at most`);
    const spells = levels.map((level, place) => ({ level, time: times[place] ?? 0, allowed: 8 / 2 ** ((level - 85) / 3) }));
    const dose = spells.reduce((sum, { time, allowed }) => sum + (100 * time) / allowed, 0);
    const equivalent = 85 + 10 * Math.log10(dose / 100);
    return {
      result: { dose, equivalent_8h: equivalent },
      steps: [
        ...spells.map(({ level, time, allowed }) => `${put(level, 'dB(A)')}: ${put(time, 'h')} of the ${out(allowed, 'h')} allowed`),
        `D = 100 × (${spells.map(({ time, allowed }) => `${put(time, 'h')} / ${out(allowed, 'h')}`).join(' + ')}) = ${out(dose, '%')}`,
        `The same as 8 hours at: L_8h = 85 + 10 × log10(${out(dose, '')} / 100) = ${out(equivalent, 'dB(A)')}`,
        dose > 100
          ? 'That is more than a full workplace day: turn something down, or leave something out.'
          : 'A full dose, 100 %, is a limit for work, not an aim: keep well under it.',
      ],
    };
  },
});
