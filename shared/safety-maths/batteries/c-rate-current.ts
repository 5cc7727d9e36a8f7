import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The current that a C-rate means: I = c × C. Capacity in Ah, C-rate a plain number (1 C empties the battery in an hour); current in A, time
 * to empty in h. Source: lithium cell specifications.
 */
export const cRateCurrent = calculation({
  id: 'c-rate-current',
  title: 'Current from a C-rate',
  topic: 'batteries',
  formula: 'I = c × C',
  inputs: {
    capacity: quantity('capacity', 'Ah', { min: 0, max: 1e5 }),
    c_rate: quantity('C-rate', '', { min: 0.001, max: 200 }),
  },
  outputs: { current: 'A', time: 'h' },
  sources: ['lithiumCell', 'lithiumCells', 'si'],
  validity: 'The rated capacity of a battery that is not aged; a C-rate printed for discharge does not hold for charging.',
  foundBy: ['C rate', 'what does 2C mean', 'lithium discharge current', 'charging current', '1C'],
  caution: 'lithium',
  checks: ['discharge current from C-rate'],
  work({ capacity, c_rate: rate }) {
    const current = rate * capacity;
    return {
      result: { current, time: 1 / rate },
      steps: [
        `1 C is the current that empties the battery in an hour: for ${put(capacity, 'Ah')} that is ${put(capacity, 'A')}.`,
        `I = c × C = ${put(rate, '')} × ${put(capacity, 'Ah')} = ${out(current, 'A')}`,
        `At that rate it lasts 1 / c = ${out(1 / rate, 'h')} at most. Never go above the maker’s figure.`,
      ],
    };
  },
});
