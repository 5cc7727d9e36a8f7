import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** Ohm's law for the voltage: V = I × R. Current in A, resistance in Ω; voltage in V. Source: SI Brochure (ohm). */
export const voltageFromCurrentAndResistance = calculation({
  id: 'voltage-from-current-and-resistance',
  title: 'Voltage from current and resistance',
  topic: 'electrical-basics',
  formula: 'V = I × R',
  inputs: {
    current: quantity('current', 'A', { min: 0, max: 1e6 }),
    resistance: quantity('resistance', 'ohm', { min: 0, max: 1e12 }),
  },
  outputs: { voltage: 'V' },
  sources: ['si'],
  validity:
    'Direct current, or alternating current through plain resistance; coils, capacitors and long cables at radio frequency behave otherwise.',
  foundBy: ['Ohm’s law', 'volts from amps and ohms', 'touch voltage', 'voltage lost'],
  caution: 'general',
  checks: ['voltage from current and resistance'],
  work({ current, resistance }) {
    const voltage = current * resistance;
    return {
      result: { voltage },
      steps: [
        'Voltage is current times resistance: V = I × R.',
        `V = ${put(current, 'A')} × ${put(resistance, 'ohm')}`,
        `V = ${out(voltage, 'V')}`,
      ],
    };
  },
});
