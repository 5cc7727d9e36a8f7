import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The resistance of a wire from its material and area: R = ρ × k / A. Resistivity as Ω/km of a wire of 1 mm² (17.241, copper, if left out),
 * area in mm², stranding factor 1 to 1.2 (1 if left out); resistance in Ω/km at 20 °C. Source: a cable technical note.
 */
export const conductorResistanceFromArea = calculation({
  id: 'conductor-resistance-from-area',
  title: 'Resistance of a wire from its area',
  topic: 'batteries',
  formula: 'R = ρ × k / A',
  inputs: {
    conductor_area: quantity('area of the conductor', 'mm²', { min: 0.01, max: 1000 }),
    resistivity: optional(quantity('resistance of 1 km of the same metal with 1 mm²', 'ohm/km', { min: 10, max: 2000 })),
    stranding_factor: optional(quantity('stranding factor', '', { min: 1, max: 1.2 })),
  },
  outputs: { resistance: 'ohm/km' },
  sources: ['resistivity'],
  validity: 'A wire at 20 °C that is all of one metal; strands are a little longer than the wire, so their factor is 1.02 to 1.08.',
  foundBy: ['copper wire', 'resistivity', 'aluminium wire', 'thin wire'],
  caution: 'battery',
  checks: [{ name: 'conductor resistance from resistivity', keys: { resistivity_ohm_mm2_per_km: 'resistivity' } }],
  work({ conductor_area: area, resistivity = 17.241, stranding_factor: factor = 1 }) {
    const resistance = (resistivity * factor) / area;
    return {
      result: { resistance },
      steps: [
        `One kilometre with an area of ${put(1, 'mm²')} has ${put(resistivity, 'ohm')}; more area means less resistance.`,
        `R = ρ × k / A = ${put(resistivity, '')} × ${put(factor, '')} / ${put(area, '')} = ${out(resistance, 'ohm/km')}`,
      ],
    };
  },
});
