import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The average power for exposure: P_avg = PEP × duty factor × share of the time. PEP in W, duty factor and share 0 to 1 (1 if left out);
 * power in W. Source: OET Bulletin 65, section 2.
 */
export const averagePower = calculation({
  id: 'average-power',
  title: 'Average power for exposure',
  topic: 'exposure',
  formula: 'P_avg = PEP × d × s',
  inputs: {
    pep: quantity('peak envelope power', 'W', { min: 0, max: 1e6 }),
    duty_factor: optional(quantity('duty factor of the mode', '', { min: 0, max: 1 })),
    fraction_of_time: optional(quantity('share of the time on the air', '', { min: 0, max: 1 })),
  },
  outputs: { average_power: 'W' },
  sources: ['oet65'],
  validity:
    'The share of the time is over the averaging period of the limit, often 30 minutes for the public and in some rules 6; the busiest such period counts.',
  foundBy: ['average power', 'duty cycle', 'duty factor SSB', 'time transmitting', 'PEP to average'],
  caution: 'rf',
  checks: ['average power from PEP, duty factor and time on'],
  work({ pep, duty_factor: duty = 1, fraction_of_time: share = 1 }) {
    const average = pep * duty * share;
    return {
      result: { average_power: average },
      steps: [
        'Average power is the peak envelope power times the duty factor times the share of the time.',
        `P_avg = ${put(pep, 'W')} × ${put(duty, '')} × ${put(share, '')}`,
        `P_avg = ${out(average, 'W')}`,
      ],
    };
  },
});
