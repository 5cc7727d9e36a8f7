import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** The charge a steady current takes or brings: Q = I × t. Current in A, time in h; charge in Ah, 1 Ah being 3600 C. Source: SI Brochure. */
export const chargeFromCurrent = calculation({
  id: 'charge-from-current',
  title: 'Ampere-hours from current and time',
  topic: 'batteries',
  formula: 'Q = I × t',
  inputs: {
    current: quantity('current', 'A', { min: 0, max: 1e4 }),
    time: quantity('time', 'h', { min: 0, max: 1e5 }),
  },
  outputs: { charge: 'Ah' },
  sources: ['si', 'ampereHours', 'leadAcidSheet'],
  validity: 'A steady current; at a large current a lead-acid battery gives fewer ampere-hours than are printed on it.',
  foundBy: ['ampere-hours', 'amp hours', 'how big a battery', 'battery size for a field day', 'battery capacity'],
  caution: 'battery',
  checks: ['charge from current and time'],
  work({ current, time }) {
    const charge = current * time;
    return {
      result: { charge },
      steps: [
        'Ampere-hours are amperes times hours.',
        `Q = I × t = ${put(current, 'A')} × ${put(time, 'h')} = ${out(charge, 'Ah')}. Choose a larger battery: not all of it may be used.`,
      ],
    };
  },
});
