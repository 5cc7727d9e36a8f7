import { calculation } from '../calculation.js';
import { choice } from '../inputs.js';
import { put } from '../working.js';

const plate = { wound: 500, unwound: 2300 } as const;
const states = Object.keys(plate) as (keyof typeof plate)[];

/** What one photographed reel's plate allows, wound and unwound; power in W. Reels differ. Source: the plate of one reel. */
export const cableReelRating = calculation({
  id: 'cable-reel-rating',
  title: 'What one cable reel’s plate says',
  topic: 'outdoors',
  formula: 'figures of one rating plate',
  inputs: { state: choice('state of the reel', states) },
  outputs: { power: 'W' },
  sources: ['reelPlate'],
  validity: 'One reel only, as an example; every reel has its own plate, and that is what counts.',
  caution: 'mains',
  checks: ['cable reel rating'],
  work({ state }) {
    const power = plate[state];
    return {
      result: { power },
      steps: [
        `This reel’s plate allows ${put(power, 'W')} ${state}.`,
        'Cable on the drum cannot lose its heat: it can melt and catch fire. Unwind all of it, and read the plate of your own reel.',
      ],
    };
  },
});
