import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** Degrees Fahrenheit in degrees Celsius: t_C = (t_F − 32) × 5 / 9. From absolute zero upward. Source: NIST SP 811. */
export const fahrenheitToCelsius = calculation({
  id: 'fahrenheit-to-celsius',
  title: 'Fahrenheit to Celsius',
  topic: 'workshop',
  formula: 't_C = (t_F − 32) × 5 / 9',
  inputs: { temperature: quantity('temperature', '°F', { min: -459.67, max: 10_000 }) },
  outputs: { temperature: '°C' },
  sources: ['fahrenheit'],
  validity: 'Temperatures; for a rise or a difference in temperature leave the 32 out.',
  foundBy: ['convert temperature', 'iron set in Fahrenheit', 'degrees F', '650 degrees'],
  caution: 'general',
  checks: ['Fahrenheit to Celsius'],
  work({ temperature }) {
    const celsius = ((temperature - 32) * 5) / 9;
    return {
      result: { temperature: celsius },
      steps: [
        'Take 32 away, then five ninths of what is left.',
        `t_C = (t_F − 32) × 5 / 9 = (${put(temperature, '')} − 32) × 5 / 9 = ${out(celsius, '°C')}`,
      ],
    };
  },
});
