import { calculation } from '../calculation.js';
import { choice } from '../inputs.js';
import { put } from '../working.js';

const longest = { 'single ladder': 9, 'step ladder': 6 } as const;
const types = Object.keys(longest) as (keyof typeof longest)[];

/** The greatest length of a portable ladder used to get up and down, by its type; length in m. Source: guidance on access by ladder. */
export const portableLadderLength = calculation({
  id: 'portable-ladder-length',
  title: 'Longest portable ladder',
  topic: 'heights',
  formula: 'figures of guidance on access',
  inputs: { type: choice('type of ladder', types) },
  outputs: { length: 'm' },
  sources: ['ladderLengths'],
  validity: 'One published piece of guidance on getting up and down by ladder; other rules and makers may set less.',
  caution: 'height',
  checks: ['greatest length of a portable ladder for access'],
  work({ type }) {
    const length = longest[type];
    return {
      result: { length },
      steps: [
        `A ${type} should be no longer than ${put(length, 'm')}.`,
        'A long ladder is heavy and bends. For more height, have a competent contractor do the work.',
      ],
    };
  },
});
