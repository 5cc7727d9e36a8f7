import { calculation } from '../calculation.js';
import { CalculationInputError, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The resistance inside a battery from how far its voltage drops: r = (E − V) / I. Voltages in V, current in A; resistance in Ω. A voltage
 * under load above that without load is refused. Source: Ohm's law; school worked problems.
 */
export const internalResistance = calculation({
  id: 'internal-resistance',
  title: 'Internal resistance of a battery',
  topic: 'batteries',
  formula: 'r = (E − V) / I',
  inputs: {
    emf: quantity('voltage without load', 'V', { min: 0.1, max: 1000 }),
    terminal_voltage: quantity('voltage under load', 'V', { min: 0, max: 1000 }),
    current: quantity('current under load', 'A', { min: 0.001, max: 1e4 }),
  },
  outputs: { internal_resistance: 'ohm' },
  sources: ['si', 'internalResistance'],
  validity: 'Readings within a few seconds of each other at the terminals; it grows with cold, age and discharge, and falls with warmth.',
  foundBy: ['internal resistance', 'voltage sags', 'weak battery', 'battery test', 'voltage drops on transmit'],
  caution: 'battery',
  checks: ['internal resistance from voltage drop and current'],
  work({ emf, terminal_voltage: voltage, current }) {
    if (voltage > emf)
      throw new CalculationInputError(
        'terminal_voltage',
        `must not be above the voltage without load, ${put(emf, 'V')}; check the readings`,
      );
    const resistance = (emf - voltage) / current;
    return {
      result: { internal_resistance: resistance },
      steps: [
        'The missing voltage is lost inside the battery.',
        `r = (E − V) / I = (${put(emf, 'V')} − ${put(voltage, 'V')}) / ${put(current, 'A')} = ${out(resistance, 'ohm')}`,
        'The lower it is, the more current flows in a short circuit. Never short a battery to find out.',
      ],
    };
  },
});
