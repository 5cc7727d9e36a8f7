import { calculation } from '../calculation.js';
import { choice, optional } from '../inputs.js';
import { put } from '../working.js';

/**
 * Fixed currents through a body, mA r.m.s. at 50 Hz or 60 Hz, at which something begins. reaction, line_b: IEC 479 (line b parts the zones
 * AC-2 and AC-3; its figure is for 10 ms or less). immobilisation, let_go_men, fibrillation (line c1, 10 s, left hand to feet): IEC
 * 60479-1, from memory. general_safety, let_go_99_percent: survey of shock data.
 */
export const shockThresholds = calculation({
  id: 'shock-thresholds',
  title: 'Currents at which a shock becomes dangerous',
  topic: 'electric-shock',
  formula: 'thresholds of IEC 60479-1',
  inputs: { current_kind: optional(choice('kind of current', ['50 Hz or 60 Hz'])) },
  outputs: {
    reaction: 'mA',
    general_safety: 'mA',
    immobilisation: 'mA',
    let_go_99_percent: 'mA',
    let_go_men: 'mA',
    fibrillation: 'mA',
    line_b: 'mA',
  },
  sources: ['shockZones', 'shockThresholds', 'shockSurvey'],
  validity: 'Mains-frequency current through healthy people, from hand to hand or hand to feet; thresholds of statistics, not of safety.',
  rule: 'IEC 60479-1 where it gives a figure; older tables put some of them elsewhere',
  foundBy: ['how many milliamps kill', 'dangerous current', 'let go current', 'heart fibrillation', 'cannot let go'],
  caution: 'rescue',
  checks: [
    { name: 'threshold of reaction, 50/60 Hz', keys: { current_mA: 'reaction' } },
    { name: 'safety threshold for the general population', keys: { current_mA: 'general_safety' } },
    { name: 'threshold of immobilisation, whole population incl. children, 50/60 Hz', keys: { current_mA: 'immobilisation' } },
    { name: 'current that 99 % of adult men can release', keys: { current_mA: 'let_go_99_percent' } },
    { name: 'threshold of let-go, adult males, 50/60 Hz', keys: { current_mA: 'let_go_men' } },
    {
      name: 'ventricular fibrillation threshold c1, long exposure, left hand to feet',
      ignore: ['time_s'],
      keys: { current_mA: 'fibrillation' },
    },
    { name: 'upper end of line b (AC-2/AC-3) for flow shorter than 10 ms', ignore: ['time_ms'], keys: { current_mA: 'line_b' } },
  ],
  work() {
    return {
      result: {
        reaction: 0.5,
        general_safety: 5,
        immobilisation: 5,
        let_go_99_percent: 9,
        let_go_men: 10,
        fibrillation: 40,
        line_b: 200,
      },
      steps: [
        `From about ${put(0.5, 'mA')} a person may jump at it, and fall from a ladder.`,
        `From ${put(5, 'mA')} on, muscles can seize and a person, above all a child, may be unable to let go.`,
        `99 % of men can still release ${put(9, 'mA')}; the standard’s figure for men is ${put(10, 'mA')}.`,
        `From about ${put(40, 'mA')} for some seconds, from the left hand to the feet, the heart may lose its beat (ventricular fibrillation) and stop.`,
        `Only for ${put(10, 'ms')} or less does the line of strong cramps lie as high as ${put(200, 'mA')}; for longer flow it is far lower.`,
        'No current here is safe: how harmful it is depends on the path, the time and the person.',
      ],
    };
  },
});
