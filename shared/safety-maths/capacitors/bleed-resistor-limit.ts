import { calculation } from '../calculation.js';
import { CalculationInputError, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The greatest bleed resistor that brings a capacitor down in a set time: R = t / (C × ln(V₀ / V)), and the power in it while the full
 * voltage is on: P = V₀² / R. Capacitance in F, voltages in V (the end below the start), time in s; results in Ω, s and W. Source:
 * OpenStax College Physics, chapter 21; discharge rules of IEC 61010-1 and IEC 62368-1.
 */
export const bleedResistorLimit = calculation({
  id: 'bleed-resistor-limit',
  title: 'Greatest bleed resistor for a set time',
  topic: 'capacitors',
  formula: 'R = t / (C × ln(V₀ / V))',
  inputs: {
    capacitance: quantity('capacitance', 'F', { min: 1e-12, max: 10 }),
    start: quantity('highest voltage at the start, peak', 'V', { min: 2, max: 1e5 }),
    end: quantity('voltage to come down to', 'V', { min: 1, max: 1e4 }),
    time: quantity('time allowed', 's', { min: 0.01, max: 86_400 }),
  },
  outputs: { resistance: 'ohm', time_constant: 's', power: 'W' },
  sources: ['capacitor', 'plugLaboratory', 'plugAudioVideo'],
  validity: 'One capacitor, one sound resistor and no other path; the parts’ tolerances, and a resistor that fails, are left out.',
  rule: 'Voltage and time are your own inputs, since each standard sets others',
  foundBy: ['size of a bleed resistor', 'bleeder', 'discharge resistor', '60 volts in 5 seconds'],
  caution: 'hv',
  checks: ['greatest bleed resistance for a discharge rule'],
  work({ capacitance, start, end, time }) {
    if (end >= start) throw new CalculationInputError('end', `is not below the start; give a voltage below ${put(start, 'V')}`);
    const constants = Math.log(start / end);
    const resistance = time / (capacitance * constants);
    const power = (start * start) / resistance;
    return {
      result: { resistance, time_constant: time / constants, power },
      steps: [
        `Time constants needed: n = ln(V₀ / V) = ln(${put(start, 'V')} / ${put(end, 'V')}) = ${out(constants, '')}`,
        `Longest time constant: T = t / n = ${put(time, 's')} / ${out(constants, '')} = ${out(time / constants, 's')}`,
        `Greatest resistor: R = T / C = ${out(time / constants, 's')} / ${put(capacitance * 1e6, 'µF')} = ${out(resistance, 'ohm')}`,
        `Power in it under a steady V₀: P = V₀² / R = (${put(start, 'V')})² / ${out(resistance, 'ohm')} = ${out(power, 'W')}`,
        'Fitting it is the work of a trained, competent person. It can fail unseen, so it is no proof that the capacitor is empty.',
      ],
    };
  },
});
