import { calculation } from '../calculation.js';
import { choice, quantity } from '../inputs.js';
import { put } from '../working.js';
import { bandsBetweenConductors } from './voltage-table.js';

/**
 * The band of a voltage between conductors: extra-low, low or high. Voltage in V, alternating (r.m.s.) or direct; the limits belong to the
 * lower band. Source: BS 7671, IEC 60364-4-41, IEC 61140.
 */
export const voltageBand = calculation({
  id: 'voltage-band',
  title: 'Extra-low, low or high voltage',
  topic: 'electric-shock',
  formula: 'extra-low: V ≤ 50 V a.c. or 120 V d.c.; low: V ≤ 1000 V a.c. or 1500 V d.c.',
  inputs: {
    voltage: quantity('voltage between the conductors', 'V', { min: 0, max: 1e6 }),
    kind: choice('alternating or direct', ['ac', 'dc']),
  },
  outputs: { band: null },
  sources: ['voltageBands'],
  validity: 'Voltage between conductors of an installation, in the words of the wiring rules; a name of a band says nothing about safety.',
  foundBy: ['low voltage', 'extra-low voltage', 'ELV', 'high voltage', 'is 12 volts safe'],
  regionDependence: 'British and IEC names; North American codes draw the lines elsewhere',
  caution: 'mains',
  checks: ['voltage band between conductors'],
  work({ voltage, kind }) {
    const { extraLow, low } = bandsBetweenConductors[kind];
    const band = voltage <= extraLow ? 'extra-low' : voltage <= low ? 'low' : 'high';
    return {
      result: { band },
      steps: [
        `The limits for ${kind === 'ac' ? 'alternating' : 'direct'} voltage: extra-low up to ${put(extraLow, 'V')}, low up to ${put(low, 'V')}, high above.`,
        `${put(voltage, 'V')} is ${band} voltage.`,
        band === 'extra-low'
          ? 'Extra-low does not mean safe: a battery can burn you and start a fire, and a wet body carries more current.'
          : `${band === 'low' ? 'Low voltage is only a name: the mains is low voltage, and it kills.' : 'High voltage kills, and can jump through air.'}`,
      ],
    };
  },
});
