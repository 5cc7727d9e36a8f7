import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The voltage lost in a two-wire d.c. lead, out and back: V_drop = 2 × L × r × I, and the heat in it, V_drop × I.
 * Length one way in m, resistance of one conductor in Ω/m, current in A, supply in V (13.8 V if left out); drop in V and in % of the supply,
 * loss in W. The conductor's area may be given for the record; the resistance decides. Source: Ohm's law; resistances from IEC 60228.
 */
export const dcVoltageDrop = calculation({
  id: 'dc-voltage-drop',
  title: 'Voltage lost in a d.c. lead',
  topic: 'batteries',
  formula: 'V_drop = 2 × L × r × I',
  inputs: {
    length_one_way: quantity('length of the lead, one way', 'm', { min: 0, max: 1000 }),
    resistance: quantity('resistance of one conductor', 'ohm/m', { min: 0, max: 100 }),
    current: quantity('current', 'A', { min: 0, max: 1e4 }),
    supply: optional(quantity('supply voltage', 'V', { min: 1, max: 1e4 })),
    conductor_area: optional(quantity('area of the conductor', 'mm²', { min: 0.01, max: 1000 })),
  },
  outputs: { drop: 'V', drop_percent: '%', loss: 'W' },
  sources: ['iec60228', 'si'],
  validity: 'A lead of two equal wires with good joints, at the temperature for which the resistance is given; warm wire loses more.',
  foundBy: ['voltage drop', 'power lead', '12 volt cable', 'radio cuts out on transmit', 'thin wire'],
  caution: 'battery',
  checks: ['voltage drop of a two-wire DC lead (out and back)'],
  work({ length_one_way: length, resistance, current, supply = 13.8 }) {
    const drop = 2 * length * resistance * current;
    return {
      result: { drop, drop_percent: (drop / supply) * 100, loss: drop * current },
      steps: [
        'The current goes out in one wire and comes back in the other: V_drop = 2 × L × r × I.',
        `V_drop = 2 × ${put(length, 'm')} × ${put(resistance, 'ohm/m')} × ${put(current, 'A')} = ${out(drop, 'V')}`,
        `Of ${put(supply, 'V')} that is ${out((drop / supply) * 100, '%')}; the lead turns ${out(drop * current, 'W')} into heat.`,
      ],
    };
  },
});
