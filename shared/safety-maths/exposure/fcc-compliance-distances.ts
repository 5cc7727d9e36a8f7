import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';
import { fccLimits } from './fcc-table.js';
import { bandAt, valueOf } from './limit-bands.js';
import type { LimitBand } from './limit-bands.js';
import { nearFieldSteps } from './near-field.js';

/**
 * The two distances at which the power density meets the FCC's limits: d = √(k × P × 10^(G / 10) / (4 π S)). Power in W, gain in dBi,
 * frequency in MHz, k for a reflection (2.56 if left out); distances in m. Source: OET Bulletin 65 with Supplement B; 47 CFR 1.1310.
 */
export const fccComplianceDistances = calculation({
  id: 'fcc-compliance-distances',
  title: 'FCC distances for a station',
  topic: 'exposure',
  formula: 'd = √(k × P × 10^(G / 10) / (4 π S))',
  inputs: {
    power: quantity('average power at the antenna', 'W', { min: 0, max: 1e6 }),
    gain: quantity('antenna gain', 'dBi', { min: -60, max: 80 }),
    frequency: quantity('frequency', 'MHz', { min: 0.3, max: 100_000 }),
    reflection_power_factor: optional(quantity('factor for a reflection, on power', '', { min: 1, max: 4 })),
  },
  outputs: { distance_general_population: 'm', distance_occupational: 'm' },
  sources: ['oet65', 'fccLimits', 'supplementB'],
  validity:
    'United States limits for a wave in free space, with the usual 2.56 for the ground unless told otherwise; closer than about a sixth of a wavelength it is no use.',
  rule: 'FCC limits, OET Bulletin 65 formula',
  foundBy: ['FCC safe distance', 'how far from my antenna', 'RF evaluation', 'keep neighbours away', 'MPE distance'],
  regionDependence: 'United States limits',
  caution: 'rf',
  checks: ['compliance distances, ground reflection 2.56 (Supplement B table row)'],
  work({ power, gain, frequency, reflection_power_factor: factor = 2.56 }) {
    const eirp = power * 10 ** (gain / 10);
    const general = distanceFor(fccLimits['general population'], frequency, factor * eirp);
    const trained = distanceFor(fccLimits.occupational, frequency, factor * eirp);
    return {
      result: { distance_general_population: general.distance, distance_occupational: trained.distance },
      steps: [
        `EIRP = P × 10^(G / 10) = ${put(power, 'W')} × 10^(${put(gain, '')} / 10) = ${out(eirp, 'W')}`,
        `General population, S = ${out(general.limit, 'W/m²')}: ${stepOf(factor, eirp, general)}; round up, never down.`,
        `Trained workers only, S = ${out(trained.limit, 'W/m²')}: ${stepOf(factor, eirp, trained)}`,
        ...nearFieldSteps(general.distance, frequency),
        'Family, neighbours and visitors come under the longer distance.',
      ],
    };
  },
});

interface Kept {
  readonly limit: number;
  readonly distance: number;
}

/** The distance for a band's limit; every row of the FCC's table has a power density. */
function distanceFor(bands: readonly [LimitBand, ...LimitBand[]], frequency: number, radiated: number): Kept {
  const { density } = bandAt(bands, frequency);
  const limit = density === null ? NaN : valueOf(density, frequency);
  return { limit, distance: Math.sqrt(radiated / (4 * Math.PI * limit)) };
}

const stepOf = (factor: number, eirp: number, { limit, distance }: Kept): string =>
  `d = √(k × EIRP / (4 π S)) = √(${put(factor, '')} × ${out(eirp, 'W')} / (4 π × ${out(limit, 'W/m²')})) = ${out(distance, 'm')}`;
