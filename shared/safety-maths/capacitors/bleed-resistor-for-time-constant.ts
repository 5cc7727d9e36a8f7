import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The greatest bleed resistor for a time constant: R = T / C. Capacitance in F, longest time constant in s; resistance in Ω. Source:
 * IEC 60950-1, 2.1.1.7, which allows 1 s behind an ordinary mains plug.
 */
export const bleedResistorForTimeConstant = calculation({
  id: 'bleed-resistor-for-time-constant',
  title: 'Greatest bleed resistor for a time constant',
  topic: 'capacitors',
  formula: 'R = T / C',
  inputs: {
    capacitance: quantity('capacitance', 'F', { min: 1e-12, max: 10 }),
    time_constant_max: quantity('longest time constant', 's', { min: 0.001, max: 3600 }),
  },
  outputs: { resistance: 'ohm' },
  sources: ['capacitor', 'plugTimeConstant'],
  validity: 'One capacitor and one sound resistor; after one time constant 37 % of the voltage is still there.',
  rule: 'IEC 60950-1: 1 s behind an ordinary plug; newer standards set a voltage and a time in its place',
  foundBy: ['filter capacitor resistor', 'resistor across a mains filter', 'time constant of one second', 'discharge resistor'],
  caution: 'hv',
  checks: ['greatest bleed resistance for a time constant limit'],
  work({ capacitance, time_constant_max: constant }) {
    const resistance = constant / capacitance;
    return {
      result: { resistance },
      steps: [
        'The time constant is resistance times capacitance; turned round: R = T / C.',
        `Greatest resistor: R = ${put(constant, 's')} / ${put(capacitance * 1e6, 'µF')} = ${out(resistance, 'ohm')}`,
        'One time constant is not empty: 37 % of the voltage is left. Never touch the pins of a plug that was just pulled out.',
      ],
    };
  },
});
