import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * How long a battery lasts: t = C × u / I. Capacity in Ah, share that may be used in % (all of it if left out), current in A; time in h.
 * Real batteries give less at a high current or in the cold. Source: SI Brochure (charge is current times time).
 */
export const batteryRunTime = calculation({
  id: 'battery-run-time',
  title: 'How long a battery lasts',
  topic: 'batteries',
  formula: 't = C × u / I',
  inputs: {
    capacity: quantity('capacity', 'Ah', { min: 0, max: 1e5 }),
    current: quantity('average current', 'A', { min: 1e-6, max: 1e5 }),
    usable_share: optional(quantity('share that may be used', '%', { min: 0, max: 100 })),
  },
  outputs: { time: 'h' },
  sources: ['si'],
  validity: 'A steady or average current well within the battery’s rating; cold, age and a large current all shorten the time.',
  foundBy: ['how long will a battery last', 'battery life', 'run time', 'ampere-hours', 'usable capacity'],
  caution: 'battery',
  checks: ['run time from charge and current'],
  work({ capacity, current, usable_share: share }) {
    const time = (capacity * (share ?? 100)) / 100 / current;
    return {
      result: { time },
      steps: [
        'Time is the usable ampere-hours divided by the current: t = C × u / I.',
        share === undefined
          ? `t = ${put(capacity, 'Ah')} / ${put(current, 'A')}`
          : `t = ${put(capacity, 'Ah')} × ${put(share, '%')} / ${put(current, 'A')} = ${out((capacity * share) / 100, 'Ah')} / ${put(current, 'A')}`,
        `t = ${out(time, 'h')}`,
      ],
    };
  },
});
