import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The current at which a battery's capacity was measured: I = C / t. Capacity in Ah, hours of the rating in h (20 for most lead-acid
 * batteries); current in A. Source: a lead-acid battery's data sheet.
 */
export const ratedDischargeCurrent = calculation({
  id: 'rated-discharge-current',
  title: 'Current behind a battery’s ampere-hours',
  topic: 'batteries',
  formula: 'I = C / t',
  inputs: {
    capacity: quantity('capacity', 'Ah', { min: 0.001, max: 1e5 }),
    rate: quantity('hours of the rating', 'h', { min: 0.1, max: 200 }),
  },
  outputs: { current: 'A' },
  sources: ['leadAcidSheet', 'si'],
  validity: 'The maker’s own test, new and at room temperature; at a larger current a lead-acid battery gives fewer ampere-hours.',
  foundBy: ['20 hour rate', 'C20', 'ampere-hour rating', 'lead-acid capacity'],
  caution: 'battery',
  checks: ['discharge current at the 20-hour rate'],
  work({ capacity, rate }) {
    const current = capacity / rate;
    return {
      result: { current },
      steps: [
        `The maker emptied the battery evenly in ${put(rate, 'h')}.`,
        `I = C / t = ${put(capacity, 'Ah')} / ${put(rate, 'h')} = ${out(current, 'A')}. Take more, and it lasts less than the ampere-hours promise.`,
      ],
    };
  },
});
