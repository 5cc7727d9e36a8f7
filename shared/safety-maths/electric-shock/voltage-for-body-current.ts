import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The touch voltage that drives a current through a body: V = I × Z. Current in mA, impedance of the path in Ω; voltage in V.
 * Source: Ohm's law, SI Brochure.
 */
export const voltageForBodyCurrent = calculation({
  id: 'voltage-for-body-current',
  title: 'Voltage that drives a current through a body',
  topic: 'electric-shock',
  formula: 'V = I × Z',
  inputs: {
    current: quantity('current through the body', 'mA', { min: 0, max: 1e4 }),
    impedance: quantity('impedance of the path through the body', 'ohm', { min: 100, max: 1e6 }),
  },
  outputs: { touch_voltage: 'V' },
  sources: ['si'],
  validity:
    'A first estimate by Ohm’s law for one fixed impedance; a real body’s impedance falls as the voltage rises and when skin is wet.',
  foundBy: ['what voltage is dangerous', 'low voltage shock', 'touch voltage', 'can a small voltage hurt'],
  caution: 'rescue',
  checks: ['voltage giving a body current'],
  work({ current, impedance }) {
    const voltage = (current / 1000) * impedance;
    return {
      result: { touch_voltage: voltage },
      steps: [
        'Voltage is current times the impedance of the path: V = I × Z.',
        `V = ${put(current / 1000, 'A')} × ${put(impedance, 'ohm')} = ${out(voltage, 'V')}`,
        'It is not a safe voltage: a body with a lower impedance carries the same current at less.',
      ],
    };
  },
});
