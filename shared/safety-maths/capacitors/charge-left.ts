import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * What is left of a capacitor's voltage after n time constants: f = e^(−n). Time constants as a plain number; the share as a fraction
 * and in %, and, when the starting voltage in V is given, the voltage left in V. Source: OpenStax College Physics, chapter 21.
 */
export const chargeLeft = calculation({
  id: 'charge-left',
  title: 'Voltage left after some time constants',
  topic: 'capacitors',
  formula: 'f = e^(−n)',
  inputs: {
    time_constants: quantity('number of time constants gone by', '', { min: 0, max: 100 }),
    start: optional(quantity('voltage at the start', 'V', { min: 0, max: 1e6 })),
  },
  outputs: { fraction: '', percent: '%', voltage: 'V' },
  sources: ['capacitor', 'plugTimeConstant'],
  validity:
    'One capacitor and one sound resistor, with nothing feeding them; some capacitors build up voltage again after they were emptied.',
  foundBy: ['37 per cent', 'how much is left', 'five time constants', 'percentage left on a capacitor'],
  caution: 'hv',
  checks: ['fraction left after n time constants', 'residual after one time constant (rule of the standard)'],
  work({ time_constants: n, start }) {
    const fraction = Math.exp(-n);
    const voltage = start === undefined ? null : start * fraction;
    return {
      result: { fraction, percent: fraction * 100, voltage },
      steps: [
        `In each time constant the voltage falls to about 37 % of what it was: f = e^(−n) = e^(−${put(n, '')}) = ${out(fraction, '')}`,
        `That is ${out(fraction * 100, '%')} of the starting voltage.`,
        ...(start === undefined || voltage === null
          ? []
          : [`Voltage left: V = V₀ × f = ${put(start, 'V')} × ${out(fraction, '')} = ${out(voltage, 'V')}`]),
        'A small share of a high voltage can still kill, and a bleed resistor can fail unseen.',
      ],
    };
  },
});
