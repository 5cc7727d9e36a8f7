import { calculation } from '../calculation.js';
import { CalculationInputError, list } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * Several transmitters at once: each level over its own limit, added up; the sum must not exceed 1. Levels and limits in W/m², in the same
 * order and of the same number. Source: multiple-source clauses of ICNIRP and OET Bulletin 65.
 */
export const exposureSum = calculation({
  id: 'exposure-sum',
  title: 'Several transmitters at once: power densities',
  topic: 'exposure',
  formula: 'S₁ / L₁ + S₂ / L₂ + … ≤ 1',
  inputs: {
    levels: list('power density from each transmitter', 'W/m²', { min: 0, max: 1e6 }),
    limits: list('limit for each, in the same order', 'W/m²', { min: 1e-6, max: 1e6 }),
  },
  outputs: { sum: '', complies: null },
  sources: ['sumOfSources'],
  validity: 'Average levels at one place, each held against the limit for its own frequency and the same group of people.',
  foundBy: ['several transmitters', 'two antennas', 'multi-operator station', 'contest station exposure', 'add up exposure'],
  caution: 'rf',
  checks: ['sum of exposure ratios of several sources'],
  work({ levels, limits }) {
    const shares = sharesOf(levels, limits);
    return sumOf(
      shares,
      shares.map(({ level, limit, ratio }) => `Share: S / L = ${put(level, 'W/m²')} / ${put(limit, 'W/m²')} = ${out(ratio, '')}`),
    );
  },
});

/**
 * The same with field strengths: the shares are squared before they are added, as power goes with the square of the field. Levels and
 * limits in V/m. Source: as above.
 */
export const exposureSumFields = calculation({
  id: 'exposure-sum-fields',
  title: 'Several transmitters at once: field strengths',
  topic: 'exposure',
  formula: '(E₁ / L₁)² + (E₂ / L₂)² + … ≤ 1',
  inputs: {
    levels: list('electric field from each transmitter', 'V/m', { min: 0, max: 1e5 }),
    limits: list('limit for each, in the same order', 'V/m', { min: 0.1, max: 1e5 }),
  },
  outputs: { sum: '', complies: null },
  sources: ['sumOfSources'],
  validity:
    'Average r.m.s. fields at one place, where heating sets the limit; below 10 MHz the guidelines also have a sum without squares.',
  foundBy: ['several transmitters', 'two antennas volts per metre', 'add up field strengths'],
  caution: 'rf',
  checks: ['sum of exposure ratios of several sources (fields, squared)'],
  work({ levels, limits }) {
    const shares = sharesOf(levels, limits).map(({ level, limit, ratio }) => ({ level, limit, ratio: ratio ** 2 }));
    return sumOf(
      shares,
      shares.map(({ level, limit, ratio }) => `Share: (E / L)² = (${put(level, 'V/m')} / ${put(limit, 'V/m')})² = ${out(ratio, '')}`),
    );
  },
});

interface Share {
  readonly level: number;
  readonly limit: number;
  readonly ratio: number;
}

/** Each level over its limit; throws CalculationInputError when the two lists are not of the same length. */
function sharesOf(levels: readonly number[], limits: readonly number[]): Share[] {
  if (levels.length !== limits.length)
    throw new CalculationInputError('limits', `give as many as there are levels: ${levels.length}, not ${limits.length}`);
  return levels.map((level, index) => ({ level, limit: limits[index] ?? NaN, ratio: level / (limits[index] ?? NaN) }));
}

function sumOf(shares: readonly Share[], steps: readonly string[]): { result: { sum: number; complies: boolean }; steps: string[] } {
  const sum = shares.reduce((total, { ratio }) => total + ratio, 0);
  // Shares that come to exactly 1 on paper may miss it by the last figures of binary arithmetic.
  const complies = sum <= 1 + 1e-12;
  return {
    result: { sum, complies },
    steps: [
      ...steps,
      `Sum of the shares = ${shares.map(({ ratio }) => out(ratio, '')).join(' + ')} = ${out(sum, '')}`,
      complies
        ? 'It is not above 1: together they stay within the limits.'
        : 'It is above 1: together they are too much, even if each alone is not.',
    ],
  };
}
