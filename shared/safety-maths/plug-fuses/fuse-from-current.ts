import { calculation } from '../calculation.js';
import { fromRegion, list, quantity } from '../inputs.js';
import { put } from '../working.js';
import { smallestNotBelow } from './listed-rating.js';

/**
 * The smallest listed fuse not below a current. Load in A; series in A, the region's plug fuses or breakers if left out.
 * Result in A; null when the largest of the list is too small. The fuse must also protect the cable. Source: BS 1362, IEC 60898-1, NFPA 70.
 */
export const fuseFromCurrent = calculation({
  id: 'fuse-from-current',
  title: 'Smallest listed fuse not below a current',
  topic: 'plug-fuses',
  formula: 'the first listed rating not below I',
  inputs: {
    load: quantity('running current', 'A', { min: 0, max: 1e4 }),
    series: fromRegion(list('listed ratings', 'A', { min: 0.01, max: 1e4 }), 'series'),
  },
  outputs: { fuse: 'A' },
  sources: ['bs1362', 'breakers', 'branch'],
  validity:
    'A known steady running current; it allows neither for a surge at switch-on nor for the cable, which the fuse must protect as well.',
  rule: 'Smallest listed rating not below the running current',
  foundBy: ['blade fuse', 'which fuse', 'fuse for amps', 'breaker size'],
  regionDependence: 'listed ratings: plug fuses in the UK, breakers elsewhere',
  caution: 'plug',
  checks: ['smallest blade fuse not below the load current'],
  work({ load, series }) {
    const fuse = smallestNotBelow(load, series);
    return {
      result: { fuse },
      steps: [
        `The load takes ${put(load, 'A')}. Go up the list ${series.map((rating) => put(rating, 'A')).join(', ')}.`,
        fuse === null ? 'None is large enough.' : `The first that is not below it: ${put(fuse, 'A')}`,
      ],
    };
  },
});
