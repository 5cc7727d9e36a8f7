import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The energy in a charged capacitor: E = ½ × C × V². Capacitance in F, voltage in V; energy in J. Source: OpenStax College Physics,
 * chapter 19.
 */
export const capacitorEnergy = calculation({
  id: 'capacitor-energy',
  title: 'Energy left in a capacitor',
  topic: 'capacitors',
  formula: 'E = ½ × C × V²',
  inputs: {
    capacitance: quantity('capacitance', 'F', { min: 0, max: 1e4 }),
    voltage: quantity('voltage', 'V', { min: 0, max: 1e6 }),
  },
  outputs: { energy: 'J' },
  sources: ['capacitor'],
  validity: 'Any charged capacitor of known value; the marked value of an old one can be well out.',
  foundBy: ['joules', 'stored energy', 'charged capacitor', 'reservoir capacitor', 'half C V squared'],
  caution: 'hv',
  checks: ['energy of a charged capacitor'],
  work({ capacitance, voltage }) {
    const energy = 0.5 * capacitance * voltage * voltage;
    return {
      result: { energy },
      steps: [
        'Energy is half the capacitance times the voltage squared: E = ½ × C × V².',
        `E = ½ × ${put(capacitance * 1e6, 'µF')} × (${put(voltage, 'V')})²`,
        `E = ${out(energy, 'J')}`,
      ],
    };
  },
});
