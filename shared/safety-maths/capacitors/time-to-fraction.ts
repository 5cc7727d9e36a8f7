import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The time until only a share of the voltage is left: t = T × ln(1 / f). Time constant in s, share as a fraction from above 0 to 1; time
 * in s. Source: OpenStax College Physics, chapter 21.
 */
export const timeToFraction = calculation({
  id: 'time-to-fraction',
  title: 'Time until a share of the voltage is left',
  topic: 'capacitors',
  formula: 't = T × ln(1 / f)',
  inputs: {
    time_constant: quantity('time constant', 's', { min: 0, max: 1e6 }),
    fraction: quantity('share of the voltage left', '', { min: 1e-12, max: 1 }),
  },
  outputs: { time: 's' },
  sources: ['capacitor'],
  validity: 'One capacitor and one sound resistor, with nothing feeding them.',
  foundBy: ['time to fall to one per cent', 'how long to discharge', 'discharge time', 'half the voltage'],
  caution: 'hv',
  checks: ['discharge time to a fraction'],
  work({ time_constant: constant, fraction }) {
    const time = constant * Math.log(1 / fraction);
    return {
      result: { time },
      steps: [
        'Time is the time constant times the natural logarithm of one over the share left: t = T × ln(1 / f).',
        `t = ${put(constant, 's')} × ln(1 / ${put(fraction, '')}) = ${out(time, 's')}`,
        'A resistor can fail: the time is no proof that the capacitor is empty.',
      ],
    };
  },
});
