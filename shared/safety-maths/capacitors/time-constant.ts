import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The time constant of a capacitor and its bleed resistor: T = R × C, and five of them, the usual wait until it is nearly empty. Resistance
 * in Ω, capacitance in F; times in s. Source: OpenStax College Physics, chapter 21.
 */
export const timeConstant = calculation({
  id: 'time-constant',
  title: 'Time constant of a bleed resistor',
  topic: 'capacitors',
  formula: 'T = R × C',
  inputs: {
    resistance: quantity('resistance', 'ohm', { min: 0, max: 1e12 }),
    capacitance: quantity('capacitance', 'F', { min: 0, max: 1e4 }),
  },
  outputs: { time_constant: 's', five_time_constants: 's' },
  sources: ['capacitor'],
  validity: 'One capacitor and one sound resistor, with nothing feeding them; a resistor that has failed leaves the capacitor charged.',
  foundBy: ['five time constants', 'wait after switching off', 'bleeder', 'tau', 'how long until it is empty'],
  caution: 'hv',
  checks: ['time constant'],
  work({ resistance, capacitance }) {
    const constant = resistance * capacitance;
    return {
      result: { time_constant: constant, five_time_constants: 5 * constant },
      steps: [
        'One time constant is resistance times capacitance: T = R × C.',
        `T = ${put(resistance, 'ohm')} × ${put(capacitance * 1e6, 'µF')} = ${out(constant, 's')}`,
        `Five of them: t = 5 × T = 5 × ${out(constant, 's')} = ${out(5 * constant, 's')}`,
        'Then less than one per cent of the voltage is left.',
        'Even so, a competent person must prove it dead: a bleed resistor can fail without anyone knowing.',
      ],
    };
  },
});
