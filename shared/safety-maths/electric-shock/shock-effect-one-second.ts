import { calculation } from '../calculation.js';
import { choice } from '../inputs.js';
import { put } from '../working.js';
import { effectsOfOneSecond } from './shock-effect-table.js';

const effects = Object.keys(effectsOfOneSecond) as (keyof typeof effectsOfOneSecond)[];

/** The current at which 60 Hz for 1 s, hand to foot, has an effect; smallest and largest in mA. Source: OSHA 3075. */
export const shockEffectOneSecond = calculation({
  id: 'shock-effect-one-second',
  title: 'Current that has an effect within a second',
  topic: 'electric-shock',
  formula: 'table of OSHA 3075',
  inputs: { effect: choice('effect on the person', effects) },
  outputs: { current_min: 'mA', current_max: 'mA' },
  sources: ['shockOsha'],
  validity: '60 Hz current from hand to foot for 1 s; longer flow harms at less, and so may the same current through a weaker person.',
  rule: 'The American table for 1 s; IEC 60479-1 draws its lines otherwise',
  foundBy: ['what does a shock do', 'effects of current', 'can you let go', 'stop breathing', 'milliamps and the body'],
  caution: 'rescue',
  checks: ['effect of current for one second (60 Hz)'],
  work({ effect }) {
    const [least, most] = effectsOfOneSecond[effect];
    return {
      result: { current_min: least, current_max: most },
      steps: [
        least === most
          ? `For this effect (${effect}), the table gives ${put(least, 'mA')} for 1 s.`
          : `For this effect (${effect}), the table gives ${put(least, 'mA')} to ${put(most, 'mA')} for 1 s.`,
        `A 13 A fuse carries ${put(13000, 'mA')} all day: it guards the cable from fire, not a person from a shock.`,
        'A shock that is barely felt is a warning: stop using that equipment and have it checked.',
      ],
    };
  },
});
