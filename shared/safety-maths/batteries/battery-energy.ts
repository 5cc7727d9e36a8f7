import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** The energy in a battery: E = V × C. Voltage in V, capacity in Ah; energy in Wh, 1 Wh being 3600 J. Source: SI Brochure. */
export const batteryEnergy = calculation({
  id: 'battery-energy',
  title: 'Energy in a battery',
  topic: 'batteries',
  formula: 'E = V × C',
  inputs: {
    voltage: quantity('nominal voltage', 'V', { min: 0, max: 1e4 }),
    capacity: quantity('capacity', 'Ah', { min: 0, max: 1e5 }),
  },
  outputs: { energy: 'Wh' },
  sources: ['si'],
  validity: 'The whole charge at the nominal voltage, as printed on the battery; what a radio gets out of it is less.',
  foundBy: ['watt-hours', 'mAh to Wh', 'energy in a battery', 'battery on an aircraft', 'power bank'],
  caution: 'battery',
  checks: ['energy in a battery'],
  work({ voltage, capacity }) {
    const energy = voltage * capacity;
    return {
      result: { energy },
      steps: [
        'Watt-hours are volts times ampere-hours: E = V × C.',
        `E = ${put(voltage, 'V')} × ${put(capacity, 'Ah')}`,
        `E = ${out(energy, 'Wh')}, which is ${out(energy * 3600, 'J')}. In a fire all of it comes out.`,
      ],
    };
  },
});
