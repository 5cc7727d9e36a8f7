import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * Power density in front of an antenna, far field: S = k × P × 10^(G / 10) / (4 π d²). Power in W, gain in dBi, distance in m;
 * k allows for a reflection from the ground (1 if left out; 2.56 in OET Bulletin 65, 4 for a full reflection). S in W/m².
 * Source: OET Bulletin 65, section 2.
 */
export const powerDensity = calculation({
  id: 'power-density',
  title: 'Power density at a distance',
  topic: 'exposure',
  formula: 'S = k × P × 10^(G / 10) / (4 π d²)',
  inputs: {
    power: quantity('power at the antenna', 'W', { min: 0, max: 1e6 }),
    gain: quantity('antenna gain', 'dBi', { min: -60, max: 80 }),
    distance: quantity('distance', 'm', { min: 0.01, max: 1e6 }),
    reflection_power_factor: optional(quantity('factor for a reflection, on power', '', { min: 1, max: 4 })),
  },
  outputs: { power_density: 'W/m²' },
  sources: ['oet65'],
  validity:
    'Free space, straight in front of the antenna and well away from it; close in it fails, and surfaces that reflect need the factor.',
  foundBy: ['watts per square metre', 'how strong is the field', 'RF exposure', 'field in front of my antenna'],
  caution: 'rf',
  checks: ['power density at a distance', 'power density at a distance, ground reflection 2.56'],
  work({ power, gain, distance, reflection_power_factor: factor = 1 }) {
    const radiated = power * 10 ** (gain / 10);
    const density = (factor * radiated) / (4 * Math.PI * distance * distance);
    return {
      result: { power_density: density },
      steps: [
        `EIRP = ${put(power, 'W')} × 10^(${put(gain, '')} / 10) = ${out(radiated, 'W')}`,
        `It spreads over a sphere of 4 π d² = ${out(4 * Math.PI * distance * distance, 'm²')}`,
        `S = ${factor === 1 ? '' : `${put(factor, '')} × `}${out(radiated, 'W')} / ${out(4 * Math.PI * distance * distance, 'm²')} = ${out(density, 'W/m²')}`,
      ],
    };
  },
});
