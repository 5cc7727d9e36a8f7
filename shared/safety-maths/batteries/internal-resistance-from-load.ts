import { calculation } from '../calculation.js';
import { CalculationInputError, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The resistance inside a battery from its voltage across a known load: I = V / R, then r = (E − V) / I. Voltages in V, load in Ω;
 * resistance in Ω, current in A. A voltage under load above that without load is refused. Source: Ohm's law; school worked problems.
 */
export const internalResistanceFromLoad = calculation({
  id: 'internal-resistance-from-load',
  title: 'Internal resistance of a battery with a known load',
  topic: 'batteries',
  formula: 'r = (E − V) × R / V',
  inputs: {
    emf: quantity('voltage without load', 'V', { min: 0.1, max: 1000 }),
    terminal_voltage: quantity('voltage across the load', 'V', { min: 0.01, max: 1000 }),
    load: quantity('resistance of the load', 'ohm', { min: 0.01, max: 1e5 }),
  },
  outputs: { internal_resistance: 'ohm', current: 'A' },
  sources: ['si', 'internalResistance'],
  validity: 'Readings within a few seconds of each other; the load must stand the current, and its value must hold while it is warm.',
  foundBy: ['internal resistance with a resistor', 'load test', 'battery tester', 'lamp as a load'],
  caution: 'battery',
  checks: ['internal resistance from voltage drop across a load'],
  work({ emf, terminal_voltage: voltage, load }) {
    if (voltage > emf)
      throw new CalculationInputError(
        'terminal_voltage',
        `must not be above the voltage without load, ${put(emf, 'V')}; check the readings`,
      );
    const current = voltage / load;
    const resistance = (emf - voltage) / current;
    return {
      result: { internal_resistance: resistance, current },
      steps: [
        `Current through the load: I = V / R = ${put(voltage, 'V')} / ${put(load, 'ohm')} = ${out(current, 'A')}`,
        `r = (E − V) / I = (${put(emf, 'V')} − ${put(voltage, 'V')}) / ${out(current, 'A')} = ${out(resistance, 'ohm')}`,
        `The load turns V × I = ${out(voltage * current, 'W')} into heat: it must be made for that, and it gets hot.`,
      ],
    };
  },
});
