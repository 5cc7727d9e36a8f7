import { calculation } from '../calculation.js';
import { fromRegion, list, quantity } from '../inputs.js';
import { out, put } from '../working.js';
import { smallestNotBelow } from './listed-rating.js';

/**
 * The smallest listed fuse (in the UK; elsewhere the smallest listed breaker) not below the running current of a load, I = P / V.
 * Power in W; voltage in V and series in A come from the region if left out. Result in A; null when the largest of the list is too small.
 * It does not allow for inrush, and the maker's marking comes first. Source: BS 1362, IEC 60898-1, NFPA 70 (listed ratings).
 */
export const fuseFromPower = calculation({
  id: 'fuse-from-power',
  title: 'Smallest listed fuse for an appliance',
  topic: 'plug-fuses',
  formula: 'I = P / V; then the first listed rating not below I',
  inputs: {
    power: quantity('power on the rating plate', 'W', { min: 0, max: 1e6 }),
    voltage: fromRegion(quantity('supply voltage', 'V', { min: 1, max: 1e6 }), 'supplyVoltage'),
    series: fromRegion(list('listed ratings', 'A', { min: 0.01, max: 1e4 }), 'series'),
  },
  outputs: { fuse: 'A', current: 'A' },
  sources: ['bs1362', 'breakers', 'branch'],
  validity:
    'Plain heating loads at their rated voltage; motors, transformers and electronic supplies draw a surge at switch-on and may need another rating, which the maker names.',
  rule: 'Smallest listed rating not below the running current',
  foundBy: ['which fuse', 'plug fuse size', '3 amp or 13 amp', 'appliance watts'],
  regionDependence: 'mains voltage and listed ratings: plug fuses in the UK, breakers elsewhere',
  caution: 'plug',
  checks: [
    'smallest standard plug fuse not below the load current',
    { name: 'smallest standard circuit-breaker not below the load current', keys: { breaker_A: 'fuse' } },
  ],
  work({ power, voltage, series }) {
    const current = power / voltage;
    const fuse = smallestNotBelow(current, series);
    return {
      result: { fuse, current },
      steps: [
        `Running current: I = P / V = ${put(power, 'W')} / ${put(voltage, 'V')} = ${out(current, 'A')}`,
        fuse === null
          ? `None of ${series.map((rating) => put(rating, 'A')).join(', ')} is large enough: the load needs a circuit of its own.`
          : `The first of ${series.map((rating) => put(rating, 'A')).join(', ')} that is not below it: ${put(fuse, 'A')}`,
      ],
    };
  },
});
