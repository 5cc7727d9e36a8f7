import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * What to multiply the resistance of copper by, measured at some temperature, to get that at 20 °C: k = 1 / (1 + 0.004 × (t − 20 °C)).
 * Temperature in °C; the factor is a plain number. Source: IEC 60228, annex.
 */
export const copperTemperatureFactor = calculation({
  id: 'copper-temperature-factor',
  title: 'Resistance of copper brought to 20 °C',
  topic: 'batteries',
  formula: 'k = 1 / (1 + 0.004 × (t − 20))',
  inputs: { temperature: quantity('temperature of the copper', '°C', { min: -40, max: 150 }) },
  outputs: { factor: '' },
  sources: ['copperTemperature'],
  validity: 'Copper at the temperatures of everyday wire; multiply to come to 20 °C, divide to go from 20 °C to the other temperature.',
  caution: 'battery',
  checks: ['copper resistance correction to 20 C'],
  work({ temperature }) {
    const factor = 1 / (1 + 0.004 * (temperature - 20));
    return {
      result: { factor },
      steps: [
        'The resistance of copper grows by 0.4 % of its value at 20 °C for each degree above that.',
        `k = 1 / (1 + 0.004 × (t − 20)) = 1 / (1 + 0.004 × (${put(temperature, '')} − 20)) = ${out(factor, '')}`,
      ],
    };
  },
});
