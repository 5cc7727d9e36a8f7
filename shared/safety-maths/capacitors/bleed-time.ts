import { calculation } from '../calculation.js';
import { CalculationInputError, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The time a bleed resistor needs to bring a capacitor down to a voltage: t = R × C × ln(V₀ / V). Resistance in Ω, capacitance in F,
 * start and end voltage in V, the end not above the start; time in s. Source: OpenStax College Physics, chapter 21.
 */
export const bleedTime = calculation({
  id: 'bleed-time',
  title: 'Time for a bleed resistor to work',
  topic: 'capacitors',
  formula: 't = R × C × ln(V₀ / V)',
  inputs: {
    resistance: quantity('bleed resistor', 'ohm', { min: 0, max: 1e12 }),
    capacitance: quantity('capacitance', 'F', { min: 0, max: 1e4 }),
    start: quantity('voltage at the start', 'V', { min: 1e-3, max: 1e6 }),
    end: quantity('voltage to come down to', 'V', { min: 1e-3, max: 1e6 }),
  },
  outputs: { time: 's', time_constant: 's' },
  sources: ['capacitor'],
  validity: 'One capacitor and one sound resistor, with nothing feeding them; a resistor that has failed leaves the capacitor charged.',
  foundBy: ['how long to wait', 'discharge time', 'bleeder', 'wait before opening', 'fall to 50 volts'],
  caution: 'hv',
  checks: ['discharge time to a voltage'],
  work({ resistance, capacitance, start, end }) {
    if (end > start) throw new CalculationInputError('end', `${put(end, 'V')} is above the start; give a voltage up to ${put(start, 'V')}`);
    const constant = resistance * capacitance;
    const time = constant * Math.log(start / end);
    return {
      result: { time, time_constant: constant },
      steps: [
        `Time constant: T = R × C = ${put(resistance, 'ohm')} × ${put(capacitance * 1e6, 'µF')} = ${out(constant, 's')}`,
        `t = T × ln(V₀ / V) = ${out(constant, 's')} × ln(${put(start, 'V')} / ${put(end, 'V')})`,
        `t = ${out(time, 's')}. A resistor can fail: the time is no proof that the capacitor is empty.`,
      ],
    };
  },
});
