import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';
import { nearFieldSteps, nearestUse } from './near-field.js';

/**
 * From the peak power of a station to the distance people are to be kept: P_avg = PEP × d × s, then d = √(k × P_avg × 10^(G / 10) / (4
 * π S)). PEP in W, duty factor and share 0 to 1 (1 if left out), gain in dBi, limit in W/m², k for a reflection (1 if left out),
 * frequency in MHz (only to tell whether the distance is beyond λ/2π). Source: OET Bulletin 65, section 2.
 */
export const stationDistance = calculation({
  id: 'station-distance',
  title: 'Distance from a station’s power, mode and antenna',
  topic: 'exposure',
  formula: 'd = √(k × PEP × d_m × s × 10^(G / 10) / (4 π S))',
  inputs: {
    pep: quantity('peak envelope power at the antenna', 'W', { min: 0, max: 1e6 }),
    duty_factor: optional(quantity('duty factor of the mode', '', { min: 0, max: 1 })),
    fraction_of_time: optional(quantity('share of the time on the air', '', { min: 0, max: 1 })),
    gain: quantity('antenna gain', 'dBi', { min: -60, max: 80 }),
    limit: quantity('limit of power density', 'W/m²', { min: 1e-6, max: 1e6 }),
    frequency: optional(quantity('frequency', 'MHz', { min: 0.1, max: 300_000 })),
    reflection_power_factor: optional(quantity('factor for a reflection, on power', '', { min: 1, max: 4 })),
  },
  outputs: { distance: 'm', average_power: 'W', beyond_near_field: null },
  sources: ['oet65'],
  validity:
    'Free space, straight in front of the antenna, and no nearer than λ/2π; the share of the time is over the averaging period of the limit, 30 minutes for the public in most rules.',
  foundBy: ['my station exposure', 'how far should people stay', 'keep clear distance', 'safe distance SSB', 'safe distance FM'],
  caution: 'rf',
  checks: ['compliance distance from PEP, mode and gain (ICNIRP 2020 public, whole body)'],
  work({ pep, duty_factor: duty = 1, fraction_of_time: share = 1, gain, limit, frequency, reflection_power_factor: factor = 1 }) {
    const average = pep * duty * share;
    const eirp = average * 10 ** (gain / 10);
    const distance = Math.sqrt((factor * eirp) / (4 * Math.PI * limit));
    return {
      result: { distance, average_power: average, beyond_near_field: frequency === undefined ? null : distance >= nearestUse(frequency) },
      steps: [
        `Average power: P_avg = PEP × d_m × s = ${put(pep, 'W')} × ${put(duty, '')} × ${put(share, '')} = ${out(average, 'W')}`,
        `EIRP = P_avg × 10^(G / 10) = ${out(average, 'W')} × 10^(${put(gain, '')} / 10) = ${out(eirp, 'W')}`,
        `d = √(k × EIRP / (4 π S)) = √(${put(factor, '')} × ${out(eirp, 'W')} / (4 π × ${put(limit, 'W/m²')})) = ${out(distance, 'm')}; round up, never down.`,
        ...nearFieldSteps(distance, frequency),
      ],
    };
  },
});
