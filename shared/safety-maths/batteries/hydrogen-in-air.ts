import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** Least share of hydrogen in air that can explode, % by volume. Source: chemical safety data, from memory. */
const lowerLimit = 4;

/**
 * How near a share of hydrogen in air is to the least that can explode: s = share / 4 %. Share in % by volume; result in % of the limit.
 * Source: chemical safety data, from memory.
 */
export const hydrogenInAir = calculation({
  id: 'hydrogen-in-air',
  title: 'Hydrogen from a charging battery',
  topic: 'batteries',
  formula: 's = share / 4 %',
  inputs: { share: quantity('hydrogen in the air, by volume', '%', { min: 0, max: 100 }) },
  outputs: { lower_limit: '%', share_of_limit: '%' },
  sources: ['hydrogen'],
  validity: 'Hydrogen mixed evenly with air; just above a battery and under a lid or a roof there is far more than in the room.',
  caution: 'battery',
  checks: [{ name: 'lower explosive limit of hydrogen in air', inputs: { share: 1 }, keys: { volume_percent: 'lower_limit' } }],
  work({ share }) {
    const ofLimit = (share / lowerLimit) * 100;
    return {
      result: { lower_limit: lowerLimit, share_of_limit: ofLimit },
      steps: [
        `From ${put(lowerLimit, '%')} of hydrogen in the air one spark can set off an explosion.`,
        `s = share / ${put(lowerLimit, '%')} = ${put(share, '%')} / ${put(lowerLimit, '%')} = ${out(ofLimit, '%')} of that limit.`,
        'Charge lead-acid batteries where fresh air moves freely, and switch the charger off before you touch its clips.',
      ],
    };
  },
});
