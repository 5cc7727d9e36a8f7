import { calculation } from '../calculation.js';
import { choice } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * Average over peak power while transmitting; for FT8 / FT4, over whole cycles, half of which are listening. Source: OET Bulletin 65
 * Supplement B, table 2; FT8 / FT4 from a later page.
 */
const dutyFactors = {
  'SSB, no speech processing': 0.2,
  'SSB, heavy speech processing': 0.5,
  'CW (conversational)': 0.4,
  'FM voice': 1,
  'FSK or RTTY': 1,
  'AFSK SSB': 1,
  'FT8 / FT4': 0.5,
  'steady carrier': 1,
} as const;

/**
 * The duty factor of a mode, a plain number from 0 to 1: average over peak envelope power. Source: OET Bulletin 65 Supplement B, table
 * 2, and for FT8 / FT4 a later page.
 */
export const dutyFactor = calculation({
  id: 'duty-factor',
  title: 'Duty factor of a mode',
  topic: 'radio',
  formula: 'd = P_avg / PEP',
  inputs: { mode: choice('mode', Object.keys(dutyFactors) as (keyof typeof dutyFactors)[]) },
  outputs: { duty_factor: '' },
  sources: ['dutyFactors', 'dutyDigital'],
  validity: 'Usual operating in the mode; the time spent listening is counted apart, and a test tone or tuning is a steady carrier.',
  rule: 'OET Bulletin 65 Supplement B; for processed SSB some copies print 0.4, and the higher 0.5 is used here',
  foundBy: ['duty cycle', 'ssb average power', 'mode factor', 'ft8', 'how much is speech'],
  caution: 'rf',
  checks: ['duty factor of a mode'],
  work({ mode }) {
    const duty = dutyFactors[mode];
    return {
      result: { duty_factor: duty },
      steps: [
        `${mode}: d = P_avg / PEP = ${put(duty, '')}`,
        `So ${put(100, 'W')} PEP counts as ${out(100 * duty, 'W')} on average.`,
        mode === 'FT8 / FT4'
          ? 'This already counts that each cycle is half listening: do not take the same half off again as time.'
          : 'Multiply again by the share of the time spent transmitting. When in doubt use 1, the cautious choice.',
      ],
    };
  },
});
