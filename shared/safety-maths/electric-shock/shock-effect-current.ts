import { calculation } from '../calculation.js';
import { choice } from '../inputs.js';
import { put } from '../working.js';
import { effectsOfCurrent } from './shock-effect-table.js';

const effects = Object.keys(effectsOfCurrent) as (keyof typeof effectsOfCurrent)[];

/** The current from about which 60 Hz has an effect on a person, in mA. Source: NIOSH, as quoted in a medical article. */
export const shockEffectCurrent = calculation({
  id: 'shock-effect-current',
  title: 'Current from which a shock has an effect',
  topic: 'electric-shock',
  formula: 'table of NIOSH',
  inputs: { effect: choice('effect on the person', effects) },
  outputs: { current: 'mA' },
  sources: ['shockNiosh'],
  validity: 'Rough estimates for 60 Hz and an average grown-up; children and weaker people are harmed at less.',
  rule: 'The American table of single figures; others give ranges',
  caution: 'rescue',
  checks: ['effect of 60 Hz current'],
  work({ effect }) {
    const current = effectsOfCurrent[effect];
    return {
      result: { current },
      steps: [
        `For this effect (${effect}), the table gives about ${put(current, 'mA')}, which is ${put(current / 1000, 'A')}.`,
        `Common fuses and breakers of ${put(15, 'A')} or ${put(20, 'A')} open far above the currents that kill.`,
      ],
    };
  },
});
