import { calculation } from '../calculation.js';
import { choice, quantity } from '../inputs.js';
import { put } from '../working.js';

/** How much the guideline weight falls when a lift is done again and again, %. Source: L23 figures, paragraph 2.4. */
const repetitions = {
  'up to thirty times an hour': 0,
  'once or twice a minute': 30,
  'five to eight times a minute': 50,
  'more than twelve times a minute': 80,
} as const;

const british = 'British guidance; other countries use other figures';

/** The reduction of the guideline weight for lifting often, %. Only the guideline's own steps are known. Source as above. */
export const liftingOften = calculation({
  id: 'lifting-often',
  title: 'Lifting often: how much less',
  topic: 'workshop',
  formula: 'figures of the lifting guideline',
  inputs: { repetition: choice('how often', Object.keys(repetitions) as (keyof typeof repetitions)[]) },
  outputs: { reduction: '%' },
  sources: ['handlingRules'],
  validity: 'A pace of one’s own with pauses; between two steps of the guideline take the larger reduction.',
  regionDependence: british,
  caution: 'lifting',
  checks: ['reduction of the lifting guideline for repetition'],
  work({ repetition }) {
    const reduction = repetitions[repetition];
    return {
      result: { reduction },
      steps: [
        `Lifting ${repetition}: the guideline weight is ${put(reduction, '%')} less.`,
        'Tired muscles are hurt sooner: take turns, and rest before it aches.',
      ],
    };
  },
});

/** The reduction of the guideline weight for twisting to the side, %: 10 from 45°, 20 from 90°. Twist in degrees. Source: L23 figures. */
export const liftingTwisted = calculation({
  id: 'lifting-twisted',
  title: 'Lifting with a twist: how much less',
  topic: 'workshop',
  formula: 'figures of the lifting guideline',
  inputs: { twist: quantity('how far the body twists', '°', { min: 0, max: 180 }) },
  outputs: { reduction: '%' },
  sources: ['handlingRules'],
  validity: 'A twist of the trunk with both feet still; the guideline has no other steps. Turning with the feet is no twist.',
  regionDependence: british,
  caution: 'lifting',
  checks: ['reduction of the lifting guideline for twisting'],
  work({ twist }) {
    const reduction = twist >= 90 ? 20 : twist >= 45 ? 10 : 0;
    return {
      result: { reduction },
      steps: [
        `Twisted by ${put(twist, '°')}: the guideline weight is ${put(reduction, '%')} less.`,
        'Better to move your feet and not twist at all.',
      ],
    };
  },
});
