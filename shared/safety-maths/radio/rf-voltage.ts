import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The RF voltage at a feed point: V_rms = √(P × R), and the peak, √2 times as much. Power in W, resistance in Ω; voltages in V. Source: SI
 * Brochure (watt, volt and ohm).
 */
export const rfVoltage = calculation({
  id: 'rf-voltage',
  title: 'RF voltage on an antenna',
  topic: 'radio',
  formula: 'V_rms = √(P × R)',
  inputs: {
    power: quantity('power at the feed point', 'W', { min: 0, max: 1e6 }),
    resistance: quantity('resistance of the feed point', 'ohm', { min: 0.1, max: 100_000 }),
  },
  outputs: { voltage_rms: 'V', voltage_peak: 'V' },
  sources: ['si', 'sine'],
  validity: 'A feed point that is a plain resistance, with a steady carrier; reactance or standing waves can make the voltage far higher.',
  foundBy: ['rf burn', 'volts on the antenna', 'feed point voltage', 'open feeder', 'end-fed'],
  caution: 'rf',
  checks: [],
  work({ power, resistance }) {
    const rms = Math.sqrt(power * resistance);
    const peak = Math.SQRT2 * rms;
    return {
      result: { voltage_rms: rms, voltage_peak: peak },
      steps: [
        'Voltage is the square root of power times resistance: V_rms = √(P × R).',
        `V_rms = √(${put(power, 'W')} × ${put(resistance, 'ohm')}) = ${out(rms, 'V')}`,
        `Peak: V_peak = √2 × V_rms = 1.414 × ${out(rms, 'V')} = ${out(peak, 'V')}`,
        'Even a low RF voltage can burn skin deeply: never touch an antenna or open feeder that may be on the air.',
      ],
    };
  },
});
