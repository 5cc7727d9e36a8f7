import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * Power density at a new distance from one that is known: S₂ = S₁ × (d₁ / d₂)². Power densities in W/m², distances in m. Computed: the
 * power spreads over a sphere, whose surface goes with the square of its radius.
 */
export const powerDensityElsewhere = calculation({
  id: 'power-density-elsewhere',
  title: 'Power density at another distance',
  topic: 'exposure',
  formula: 'S₂ = S₁ × (d₁ / d₂)²',
  inputs: {
    known_power_density: quantity('known power density', 'W/m²', { min: 0, max: 1e6 }),
    known_distance: quantity('distance where it is known', 'm', { min: 0.01, max: 1e5 }),
    distance: quantity('new distance', 'm', { min: 0.01, max: 1e5 }),
  },
  outputs: { power_density: 'W/m²' },
  sources: ['inverseSquare'],
  validity: 'The same direction, free space, and both distances well away from the antenna; close to it the rule fails.',
  foundBy: ['inverse square law', 'twice as far away', 'moving further away', 'quarter at double distance'],
  caution: 'rf',
  checks: [],
  work({ known_power_density: known, known_distance: from, distance }) {
    const density = known * (from / distance) ** 2;
    return {
      result: { power_density: density },
      steps: [
        'The power spreads over a sphere, so the power density falls with the square of the distance: S₂ = S₁ × (d₁ / d₂)².',
        `S₂ = ${put(known, 'W/m²')} × (${put(from, 'm')} / ${put(distance, 'm')})² = ${out(density, 'W/m²')}`,
      ],
    };
  },
});
