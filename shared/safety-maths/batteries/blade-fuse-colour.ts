import { calculation } from '../calculation.js';
import { CalculationInputError, quantity } from '../inputs.js';
import { put } from '../working.js';
import { bladeColours, bladeRatings } from './blade-fuse-table.js';

/** The colour of a blade fuse by its rating in A, 1 A to 40 A as made. Source: general articles on SAE J1284 and ISO 8820-3. */
export const bladeFuseColour = calculation({
  id: 'blade-fuse-colour',
  title: 'Colour of a blade fuse',
  topic: 'batteries',
  formula: 'table of the colour code',
  inputs: { rating: quantity('rating of the fuse', 'A', { min: 1, max: 40 }) },
  outputs: { colour: null },
  sources: ['bladeColour', 'bladeFuse'],
  validity: 'Ordinary blade fuses of vehicles; large ones have other colours, and a colour fades, so read the printed rating.',
  foundBy: ['car fuse colours', 'blade fuse', 'yellow fuse', 'blue fuse', 'vehicle fuse'],
  caution: 'battery',
  checks: ['blade fuse colour'],
  work({ rating }) {
    const row = bladeColours.find((one) => one.rating === rating);
    if (row === undefined)
      throw new CalculationInputError('rating', `no blade fuse of ${put(rating, 'A')} is made; give one of: ${bladeRatings.join(', ')} A`);
    return {
      result: { colour: row.colour },
      steps: [
        'The colour tells the rating. Never fit a larger fuse than the one that was there.',
        `${put(rating, 'A')}: ${row.colour}. Go by the rating printed on the fuse.`,
      ],
    };
  },
});
