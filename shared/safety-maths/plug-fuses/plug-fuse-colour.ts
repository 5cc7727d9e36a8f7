import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { put } from '../working.js';
import { checkMade } from './plug-fuse-table.js';

/** The colour of a UK plug fuse by its rating in A: 3 A red, 13 A brown, all others black. Source: BS 1362, markings. */
export const plugFuseColour = calculation({
  id: 'plug-fuse-colour',
  title: 'Colour of a UK plug fuse',
  topic: 'plug-fuses',
  formula: '3 A red, 13 A brown, others black',
  inputs: { rating: quantity('rating of the fuse', 'A', { min: 1, max: 13 }) },
  outputs: { colour: null },
  sources: ['plugFuse'],
  validity: 'Fuses marked BS 1362 of the 1973 edition; older ones had other colours, so read the printed rating first.',
  foundBy: ['red fuse', 'brown fuse', 'black fuse', 'fuse colour'],
  regionDependence: 'UK plugs only',
  caution: 'plug',
  checks: ['plug fuse colour'],
  work({ rating }) {
    checkMade(rating);
    const colour = rating === 3 ? 'red' : rating === 13 ? 'brown' : 'black';
    return {
      result: { colour },
      steps: ['3 A is red, 13 A is brown, all others are black.', `${put(rating, 'A')}: ${colour}. Go by the rating printed on the fuse.`],
    };
  },
});
