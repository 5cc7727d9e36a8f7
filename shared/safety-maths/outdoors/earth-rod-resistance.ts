import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The resistance to earth of one upright rod in even soil: R = ρ / (2 π L) × (ln(8 L / d) − 1). Resistivity of the soil in Ω m, length in
 * the ground in m, diameter in mm; resistance in Ω. Soil changes with place and season, so the sum can be several times off.
 * Source: BS 7430, from memory.
 */
export const earthRodResistance = calculation({
  id: 'earth-rod-resistance',
  title: 'Resistance of an earth rod',
  topic: 'outdoors',
  formula: 'R = ρ / (2 × π × L) × (ln(8 × L / d) − 1)',
  inputs: {
    soil_resistivity: quantity('resistivity of the soil, in ohm metres', '', { min: 1, max: 1e5 }),
    length: quantity('length of rod in the ground', 'm', { min: 0.3, max: 30 }),
    diameter: quantity('diameter of the rod', 'mm', { min: 5, max: 60 }),
  },
  outputs: { resistance: 'Ω' },
  sources: ['earthRod'],
  validity: 'One upright rod much longer than it is thick, in even soil; layers, stones, drought and frost change it several times over.',
  foundBy: ['ground rod', 'earth stake', 'soil resistance', 'how deep an earth rod', 'earth electrode'],
  caution: 'earth',
  checks: [{ name: 'resistance of a vertical earth rod', keys: { soil_resistivity_ohm_m: 'soil_resistivity' } }],
  work({ soil_resistivity: resistivity, length, diameter }) {
    const logarithm = Math.log((8 * length) / (diameter / 1000));
    const resistance = (resistivity / (2 * Math.PI * length)) * (logarithm - 1);
    return {
      result: { resistance },
      steps: [
        `With the diameter in metres: ln(8 × L / d) = ln(8 × ${put(length, 'm')} / ${put(diameter / 1000, 'm')}) = ${out(logarithm, '')}`,
        `R = ρ / (2 × π × L) × (ln(8 × L / d) − 1) = ${put(resistivity, '')} / (2 × π × ${put(length, '')}) × (${out(logarithm, '')} − 1) = ${out(resistance, 'Ω')}`,
        'Only a measurement tells. On the mains, a rod alone seldom blows a fuse quickly: it is no shock protection by itself.',
      ],
    };
  },
});
