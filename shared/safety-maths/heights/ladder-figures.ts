import { calculation } from '../calculation.js';
import { choice, optional } from '../inputs.js';
import { put } from '../working.js';

/**
 * Fixed figures of a leaning ladder: least height above a landing in m, greatest total load in kg, number of rungs at the top not to
 * stand on. Source: HSE, ladders used for access; Norwegian rules, section 17-23; EN 131-2; LA455.
 */
export const ladderFigures = calculation({
  id: 'ladder-figures',
  title: 'Figures of a leaning ladder',
  topic: 'heights',
  formula: 'figures of ladder rules',
  inputs: { ladder: optional(choice('kind of ladder', ['leaning ladder'])) },
  outputs: { height_above_landing: 'm', greatest_load: 'kg', top_rungs: '' },
  sources: ['landing', 'landingNorway', 'ladderLoad', 'topRungs'],
  validity: 'European leaning ladders marked EN 131; the label on the ladder comes first, and other regions rate ladders otherwise.',
  caution: 'height',
  checks: [
    { name: 'least projection of an access ladder above the landing', keys: { height_m: 'height_above_landing' } },
    { name: 'least projection of an access ladder above the landing (Norway)', keys: { height_m: 'height_above_landing' } },
    { name: 'greatest total load of a ladder to EN 131', keys: { mass_kg: 'greatest_load' } },
    { name: 'rungs at the top not to stand on (leaning ladder)', keys: { rungs: 'top_rungs' } },
  ],
  work() {
    return {
      result: { height_above_landing: 1, greatest_load: 150, top_rungs: 3 },
      steps: [
        `To step off at the top, the ladder goes on at least ${put(1, 'm')} above the landing, and is secured.`,
        `The most it may carry is ${put(150, 'kg')}: you, your clothes, your tools and all you hold. Read its label.`,
        'Keep off the top three rungs: they are for your hands.',
      ],
    };
  },
});
