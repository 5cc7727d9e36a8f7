import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** The C-rate of a current: c = I / C. Capacity in Ah, current in A; the rate is a plain number. Source: a lead-acid battery's data sheet. */
export const cRate = calculation({
  id: 'c-rate',
  title: 'C-rate of a current',
  topic: 'batteries',
  formula: 'c = I / C',
  inputs: {
    capacity: quantity('capacity', 'Ah', { min: 0.001, max: 1e5 }),
    current: quantity('current', 'A', { min: 0, max: 1e5 }),
  },
  outputs: { c_rate: '' },
  sources: ['leadAcidSheet', 'si'],
  validity: 'The rated capacity; compare it with the maker’s own limits, one for discharge and another for charging.',
  foundBy: ['C rate of my radio', 'too much current for a battery', 'charger too big', 'battery load'],
  caution: 'battery',
  checks: ['C-rate from current'],
  work({ capacity, current }) {
    const rate = current / capacity;
    return {
      result: { c_rate: rate },
      steps: [
        'How many times the one-hour current is it? Divide the amperes by the ampere-hours.',
        `c = I / C = ${put(current, 'A')} / ${put(capacity, 'Ah')} = ${out(rate, '')}`,
      ],
    };
  },
});
