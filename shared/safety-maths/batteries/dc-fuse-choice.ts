import { calculation } from '../calculation.js';
import { list, optional, quantity } from '../inputs.js';
import { smallestNotBelow } from '../plug-fuses/listed-rating.js';
import { out, put } from '../working.js';
import { bladeRatings } from './blade-fuse-table.js';

/**
 * The fuse for a d.c. lead: the smallest listed fuse not below I_load / share, and whether it protects the cable, I_fuse ≤ I_cable. Currents
 * in A, share in % (80 % if left out), list in A (blade fuses if left out); fuse in A, null when the largest of the list is too small;
 * protects_cable null when no cable is given. Source: common practice; ISO 8820-3 (listed ratings).
 */
export const dcFuseChoice = calculation({
  id: 'dc-fuse-choice',
  title: 'Fuse for a d.c. lead',
  topic: 'batteries',
  formula: 'I_load / 80 % ≤ I_fuse ≤ I_cable',
  inputs: {
    load: quantity('largest current of the load', 'A', { min: 0, max: 1000 }),
    cable_rating: optional(quantity('current the cable may carry', 'A', { min: 0.1, max: 2000 })),
    series: optional(list('listed fuses', 'A', { min: 0.01, max: 2000 })),
    load_share: optional(quantity('largest load, of the fuse’s rating', '%', { min: 10, max: 100 })),
  },
  outputs: { fuse: 'A', least_rating: 'A', protects_cable: null },
  sources: ['fuseMargin', 'bladeFuse'],
  validity: 'A steady largest current on a lead from a battery or supply; the fuse the equipment’s maker names comes first.',
  rule: 'Smallest listed fuse that the load fills to 80 % at most, and never above the cable',
  foundBy: ['fuse at the battery', 'inline fuse', 'fuse for a radio', '12 volt fuse', 'mobile radio fuse'],
  caution: 'battery',
  checks: ['smallest blade fuse loaded to 80 % at most'],
  work({ load, cable_rating: cable, series = bladeRatings, load_share: share = 80 }) {
    // Times 100 first, so that 12 A at 80 % is 15 A and no rounding passes over a listed fuse.
    const least = (load * 100) / share;
    const fuse = smallestNotBelow(least, series);
    const protects = fuse === null || cable === undefined ? null : fuse <= cable;
    return {
      result: { fuse, least_rating: least, protects_cable: protects },
      steps: [
        `The load may fill ${put(share, '%')} of the fuse: I_load / share = ${put(load, 'A')} / ${put(share, '%')} = ${out(least, 'A')}`,
        fuse === null ? 'No listed fuse is large enough.' : `The smallest listed fuse that is not below it: ${put(fuse, 'A')}`,
        cable === undefined || fuse === null
          ? 'The fuse must never be above what the cable may carry: check that as well.'
          : protects === true
            ? `It is not above the ${put(cable, 'A')} of the cable, so it protects the cable. Fit it close to the battery.`
            : `It is above the ${put(cable, 'A')} of the cable, which could burn before the fuse blows: use a thicker cable.`,
      ],
    };
  },
});
