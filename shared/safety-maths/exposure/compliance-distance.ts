import { calculation } from '../calculation.js';
import { CalculationInputError, optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The distance at which the power density has fallen to a limit: d = √(k × EIRP / (4 π S)). EIRP in W, or power at the antenna in W with
 * gain in dBi; limit in W/m²; k for a reflection as in power density (1 if left out); distance in m.
 * Which limit holds is the regulator's to say. Source: OET Bulletin 65, section 2.
 */
export const complianceDistance = calculation({
  id: 'compliance-distance',
  title: 'Distance to keep the public back',
  topic: 'exposure',
  formula: 'd = √(k × EIRP / (4 π S))',
  inputs: {
    eirp: optional(quantity('EIRP', 'W', { min: 0, max: 1e9 })),
    power: optional(quantity('power at the antenna, if no EIRP is given', 'W', { min: 0, max: 1e6 })),
    gain: optional(quantity('antenna gain, if no EIRP is given', 'dBi', { min: -60, max: 80 })),
    limit: quantity('limit of power density', 'W/m²', { min: 1e-6, max: 1e6 }),
    reflection_power_factor: optional(quantity('factor for a reflection, on power', '', { min: 1, max: 4 })),
  },
  outputs: { distance: 'm' },
  sources: ['oet65'],
  validity:
    'Free space, straight in front of the antenna, with average power; no nearer than about a sixth of a wavelength, and a large antenna needs more.',
  foundBy: ['safe distance', 'how far from my antenna', 'keep people back', 'exclusion zone', 'RF exposure'],
  caution: 'rf',
  checks: [
    'forward clearance from EIRP',
    { name: 'compliance distance', ignore: ['limit', 'frequency_MHz'] },
    { name: 'compliance distance, ground reflection 2.56', ignore: ['limit', 'frequency_MHz'] },
  ],
  work({ eirp, power, gain, limit, reflection_power_factor: factor = 1 }) {
    const radiated = radiatedPower(eirp, power, gain);
    const distance = Math.sqrt((factor * radiated) / (4 * Math.PI * limit));
    return {
      result: { distance },
      steps: [
        ...(eirp === undefined && power !== undefined && gain !== undefined
          ? [`EIRP = ${put(power, 'W')} × 10^(${put(gain, '')} / 10) = ${out(radiated, 'W')}`]
          : []),
        'The power density falls with the square of the distance; it meets the limit S at d = √(k × EIRP / (4 π S)).',
        `d = √(${put(factor, '')} × ${out(radiated, 'W')} / (4 π × ${put(limit, 'W/m²')}))`,
        `d = ${out(distance, 'm')}; round up, never down.`,
      ],
    };
  },
});

function radiatedPower(eirp: number | undefined, power: number | undefined, gain: number | undefined): number {
  if (eirp !== undefined) {
    const extra = power === undefined ? (gain === undefined ? null : 'gain') : 'power';
    if (extra !== null) throw new CalculationInputError(extra, 'leave it out where the EIRP is given; or leave out eirp');
    return eirp;
  }
  if (power === undefined) throw new CalculationInputError('eirp', 'is missing; give it, or power and gain');
  if (gain === undefined) throw new CalculationInputError('gain', 'is missing; give it with power, or give eirp');
  return power * 10 ** (gain / 10);
}
