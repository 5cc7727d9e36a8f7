import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * Electric field strength from EIRP, free space, far field: E = √(30 × EIRP) / d, with S = EIRP / (4 π d²). EIRP in W, distance in m; E in
 * V/m r.m.s., S in W/m². Source: OET Bulletin 65, section 2.
 */
export const fieldStrength = calculation({
  id: 'field-strength',
  title: 'Field strength at a distance',
  topic: 'exposure',
  formula: 'E = √(30 × EIRP) / d',
  inputs: {
    eirp: quantity('EIRP', 'W', { min: 0, max: 1e9 }),
    distance: quantity('distance', 'm', { min: 0.01, max: 1e6 }),
  },
  outputs: { electric_field: 'V/m', power_density: 'W/m²' },
  sources: ['oet65'],
  validity:
    'Free space, straight in front of the antenna and well away from it; a reflection can double the field, and close in the formula fails.',
  foundBy: ['volts per metre', 'V/m at a distance', 'electric field', 'RF exposure'],
  caution: 'rf',
  checks: ['electric field and power density from EIRP'],
  work({ eirp: radiated, distance }) {
    const field = Math.sqrt(30 * radiated) / distance;
    const density = radiated / (4 * Math.PI * distance * distance);
    return {
      result: { electric_field: field, power_density: density },
      steps: [
        'In free space, r.m.s.: E = √(30 × EIRP) / d.',
        `E = √(30 × ${put(radiated, 'W')}) / ${put(distance, 'm')} = ${out(field, 'V/m')}`,
        `The power density there is EIRP / (4 π d²) = ${out(density, 'W/m²')}`,
      ],
    };
  },
});
