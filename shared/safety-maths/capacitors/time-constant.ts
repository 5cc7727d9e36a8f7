import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** The time constant of a capacitor and its bleed resistor: T = R × C. Resistance in Ω, capacitance in F; time in s. Source: OpenStax College Physics, chapter 21. */
export const timeConstant = calculation({
  id: 'time-constant',
  title: 'Time constant of a bleed resistor',
  topic: 'capacitors',
  formula: 'T = R × C',
  inputs: {
    resistance: quantity('resistance', 'ohm', { min: 0, max: 1e12 }),
    capacitance: quantity('capacitance', 'F', { min: 0, max: 1e4 }),
  },
  outputs: { time_constant: 's' },
  sources: ['capacitor'],
  caution: 'hv',
  checks: ['time constant'],
  work({ resistance, capacitance }) {
    const constant = resistance * capacitance;
    return {
      result: { time_constant: constant },
      steps: [
        'One time constant is resistance times capacitance: T = R × C.',
        `T = ${put(resistance, 'ohm')} × ${put(capacitance * 1e6, 'µF')}`,
        `T = ${out(constant, 's')}. After five of them, ${out(5 * constant, 's')}, less than one per cent of the voltage is left.`,
      ],
    };
  },
});
