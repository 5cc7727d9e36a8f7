import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The d.c. current a transmitter takes: P_in = P_out / n, I = P_in / V. Output in W, efficiency n in %, voltage in V (13.8 V if left out);
 * current in A, input and heat in W. Source: SI Brochure.
 */
export const radioInputCurrent = calculation({
  id: 'radio-input-current',
  title: 'Current a transmitter takes',
  topic: 'batteries',
  formula: 'P_in = P_out / n; I = P_in / V',
  inputs: {
    output_power: quantity('radio power that comes out', 'W', { min: 0, max: 1e5 }),
    efficiency: quantity('efficiency', '%', { min: 1, max: 100 }),
    voltage: optional(quantity('d.c. voltage at the radio', 'V', { min: 1, max: 1e5 })),
  },
  outputs: { current: 'A', input_power: 'W', heat: 'W' },
  sources: ['si'],
  validity:
    'A steady carrier; in speech the average is lower, but the lead and its fuse must stand the peak, and displays and fans add a little.',
  foundBy: ['how many amps does a radio take', 'power supply size', '100 watt radio', '13.8 volts', 'transmit current'],
  caution: 'battery',
  checks: [],
  work({ output_power: power, efficiency, voltage = 13.8 }) {
    const input = power / (efficiency / 100);
    const current = input / voltage;
    return {
      result: { current, input_power: input, heat: input - power },
      steps: [
        `Input power: P_in = P_out / n = ${put(power, 'W')} / ${put(efficiency, '%')} = ${out(input, 'W')}`,
        `I = P_in / V = ${out(input, 'W')} / ${put(voltage, 'V')} = ${out(current, 'A')}`,
        `The rest, P_in − P_out = ${out(input - power, 'W')}, is heat: leave the heatsink clear.`,
      ],
    };
  },
});
