import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';
import { gaugeOf } from './awg-table.js';

/**
 * The voltage lost in a two-wire d.c. lead of American gauge, out and back: V_drop = 2 × L × R / 1000 × I. Gauge −3 (4/0) to 40, length one
 * way in m, current in A, supply in V (13.8 V if left out); drop in V and in % of the supply. Source: Ohm's law; ASTM B258.
 */
export const awgVoltageDrop = calculation({
  id: 'awg-voltage-drop',
  title: 'Voltage lost in a d.c. lead of American gauge',
  topic: 'batteries',
  formula: 'V_drop = 2 × L × R / 1000 × I',
  inputs: {
    awg: quantity('AWG number (0 for 1/0, −1 for 2/0)', '', { min: -3, max: 40 }),
    length_one_way: quantity('length of the lead, one way', 'm', { min: 0, max: 300 }),
    current: quantity('current', 'A', { min: 0, max: 400 }),
    supply: optional(quantity('supply voltage', 'V', { min: 1, max: 1000 })),
  },
  outputs: { drop: 'V', drop_percent: '%' },
  sources: ['awg', 'resistivity', 'si'],
  validity: 'Solid copper at 20 °C with good joints; stranded or warm wire loses more, and the gauge must also stand the current.',
  foundBy: ['AWG voltage drop', 'gauge for a radio', 'power lead length', '12 volt wire gauge'],
  regionDependence: 'North American wire sizes',
  caution: 'battery',
  checks: ['voltage drop of a two-wire DC lead (AWG)'],
  work({ awg, length_one_way: length, current, supply = 13.8 }) {
    const { resistance } = gaugeOf(awg);
    const drop = ((2 * length * resistance) / 1000) * current;
    const percent = (drop / supply) * 100;
    return {
      result: { drop, drop_percent: percent },
      steps: [
        `AWG ${put(awg, '')} has R = ${out(resistance, 'ohm/km')}; the current goes out in one wire and comes back in the other.`,
        `V_drop = 2 × L × R / 1000 × I = 2 × ${put(length, 'm')} × ${out(resistance, '')} / 1000 × ${put(current, 'A')} = ${out(drop, 'V')}`,
        `Of ${put(supply, 'V')} that is ${out(percent, '%')}. What is lost turns into heat in the lead.`,
      ],
    };
  },
});
