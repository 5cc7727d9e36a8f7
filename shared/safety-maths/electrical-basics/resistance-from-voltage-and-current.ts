import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** Ohm's law for the resistance: R = V / I. Voltage in V, current in A, above 0; resistance in Ω. Source: SI Brochure (ohm). */
export const resistanceFromVoltageAndCurrent = calculation({
  id: 'resistance-from-voltage-and-current',
  title: 'Resistance from voltage and current',
  topic: 'electrical-basics',
  formula: 'R = V / I',
  inputs: {
    voltage: quantity('voltage', 'V', { min: 0, max: 1e6 }),
    current: quantity('current', 'A', { min: 1e-9, max: 1e6 }),
  },
  outputs: { resistance: 'ohm' },
  sources: ['si'],
  validity:
    'Direct current, or alternating current through plain resistance, at the temperature of the moment; an element measured cold reads lower.',
  foundBy: ['Ohm’s law', 'meter readings', 'how many ohms'],
  caution: 'general',
  checks: ['resistance from voltage and current'],
  work({ voltage, current }) {
    const resistance = voltage / current;
    return {
      result: { resistance },
      steps: [
        'Resistance is voltage divided by current: R = V / I.',
        `R = ${put(voltage, 'V')} / ${put(current, 'A')}`,
        `R = ${out(resistance, 'ohm')}`,
      ],
    };
  },
});
