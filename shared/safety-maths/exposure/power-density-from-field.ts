import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * Power density of a plane wave from its electric field: S = E² / Z. E in V/m r.m.s., Z in Ω (377 if left out); S in W/m². Source: OET
 * 65.
 */
export const powerDensityFromField = calculation({
  id: 'power-density-from-field',
  title: 'Power density from field strength',
  topic: 'exposure',
  formula: 'S = E² / Z',
  inputs: {
    electric_field: quantity('electric field, r.m.s.', 'V/m', { min: 0, max: 1e5 }),
    impedance: optional(quantity('impedance of free space', 'Ω', { min: 370, max: 380 })),
  },
  outputs: { power_density: 'W/m²' },
  sources: ['oet65'],
  validity: 'A wave far from its antenna; close in, the electric and magnetic fields do not keep this ratio and each must be measured.',
  foundBy: ['volts per metre to watts per square metre', 'V/m to W/m²', 'convert field strength'],
  caution: 'rf',
  checks: ['power density from electric field'],
  work({ electric_field: field, impedance = 377 }) {
    const density = (field * field) / impedance;
    return {
      result: { power_density: density },
      steps: [
        `Free space sets the ratio of the electric to the magnetic field: Z = ${put(impedance, 'Ω')}.`,
        `S = E² / Z = (${put(field, 'V/m')})² / ${put(impedance, 'Ω')} = ${out(density, 'W/m²')}`,
      ],
    };
  },
});
