import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * Electric field of a plane wave from its power density: E = √(S × Z). S in W/m², Z in Ω (377 if left out); E in V/m r.m.s. Source: OET
 * 65.
 */
export const fieldFromPowerDensity = calculation({
  id: 'field-from-power-density',
  title: 'Field strength from power density',
  topic: 'exposure',
  formula: 'E = √(S × Z)',
  inputs: {
    power_density: quantity('power density', 'W/m²', { min: 0, max: 1e7 }),
    impedance: optional(quantity('impedance of free space', 'Ω', { min: 370, max: 380 })),
  },
  outputs: { electric_field: 'V/m' },
  sources: ['oet65'],
  validity: 'A wave far from its antenna; close in, the electric and magnetic fields do not keep this ratio and each must be measured.',
  foundBy: ['watts per square metre to volts per metre', 'W/m² to V/m', 'convert power density'],
  caution: 'rf',
  checks: ['electric field from power density'],
  work({ power_density: density, impedance = 377 }) {
    const field = Math.sqrt(density * impedance);
    return {
      result: { electric_field: field },
      steps: [
        `Free space sets the ratio of the electric to the magnetic field: Z = ${put(impedance, 'Ω')}.`,
        `E = √(S × Z) = √(${put(density, 'W/m²')} × ${put(impedance, 'Ω')}) = ${out(field, 'V/m')}`,
      ],
    };
  },
});
