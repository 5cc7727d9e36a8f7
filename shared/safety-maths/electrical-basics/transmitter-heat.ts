import { calculation } from '../calculation.js';
import { CalculationInputError, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * What a transmitter makes of its supply: efficiency = P_rf / (V × I) and the heat that is left, V × I − P_rf.
 * RF power in W, d.c. voltage in V, current in A; efficiency in %, heat in W. More RF out than power in is refused. Source: SI Brochure.
 */
export const transmitterHeat = calculation({
  id: 'transmitter-heat',
  title: 'Efficiency and heat of a transmitter',
  topic: 'electrical-basics',
  formula: 'P_heat = V × I − P_rf',
  inputs: {
    rf_power: quantity('radio power that comes out', 'W', { min: 0, max: 1e5 }),
    voltage: quantity('d.c. voltage at the radio', 'V', { min: 0.1, max: 1e5 }),
    current: quantity('d.c. current while transmitting', 'A', { min: 0.001, max: 1e4 }),
  },
  outputs: { efficiency: '%', heat: 'W' },
  sources: ['si'],
  validity: 'Radio power, voltage and current measured together while transmitting steadily; receiving, and pauses in speech, take less.',
  foundBy: ['radio gets hot', 'heat sink', 'transceiver current', 'wasted power'],
  caution: 'general',
  checks: ['transmitter efficiency and heat'],
  work({ rf_power: rf, voltage, current }) {
    const taken = voltage * current;
    if (rf > taken)
      throw new CalculationInputError(
        'rf_power',
        `${put(rf, 'W')} is more than the ${out(taken, 'W')} that go in; check the power, the voltage and the current`,
      );
    const efficiency = (rf / taken) * 100;
    return {
      result: { efficiency, heat: taken - rf },
      steps: [
        `Power that goes in: P_in = V × I = ${put(voltage, 'V')} × ${put(current, 'A')} = ${out(taken, 'W')}`,
        `Share that comes out as radio: P_rf / P_in = ${put(rf, 'W')} / ${out(taken, 'W')} = ${out(efficiency, '%')}`,
        `The rest is heat: P_heat = P_in − P_rf = ${out(taken, 'W')} − ${put(rf, 'W')} = ${out(taken - rf, 'W')}. Keep the cooling clear.`,
      ],
    };
  },
});
