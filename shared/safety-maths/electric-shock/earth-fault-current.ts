import { calculation } from '../calculation.js';
import { fromRegion, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The current that a fault to earth drives round its loop: I = U / Z. Voltage to earth in V (the region's mains if left out), impedance of
 * the whole loop in Ω; current in A. Source: Ohm's law, SI Brochure.
 */
export const earthFaultCurrent = calculation({
  id: 'earth-fault-current',
  title: 'Earth-fault current from the loop impedance',
  topic: 'electric-shock',
  formula: 'I = U / Z',
  inputs: {
    loop_impedance: quantity('impedance of the whole earth-fault loop', 'ohm', { min: 0.001, max: 1e6 }),
    voltage_to_earth: fromRegion(quantity('voltage to earth', 'V', { min: 1, max: 1000 }), 'supplyVoltage'),
  },
  outputs: { current: 'A' },
  sources: ['si'],
  validity: 'A solid fault with no impedance of its own; a real one, and a loop that warms up, gives less current.',
  regionDependence: 'the mains voltage, when none is given',
  caution: 'mains',
  checks: ['earth-fault current from loop impedance'],
  work({ loop_impedance: impedance, voltage_to_earth: voltage }) {
    const current = voltage / impedance;
    return {
      result: { current },
      steps: [
        'The loop runs from the supply through the line, the fault and the earth wire back to the supply.',
        `I = U / Z = ${put(voltage, 'V')} / ${put(impedance, 'ohm')} = ${out(current, 'A')}`,
        'The lower the loop impedance, the larger the current and the sooner a fuse or breaker opens.',
      ],
    };
  },
});
