import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * How long a charge takes: t = C × d / (I × n). Capacity in Ah, share used d and share stored n in %, charging current in A; time in h.
 * A real charger tapers off, so it takes longer. Source: SI Brochure (charge is current times time); share stored by common practice.
 */
export const chargingTime = calculation({
  id: 'charging-time',
  title: 'Time to charge a battery',
  topic: 'batteries',
  formula: 't = C × d / (I × n)',
  inputs: {
    capacity: quantity('capacity', 'Ah', { min: 0, max: 1e5 }),
    used_share: quantity('share of the charge that was used', '%', { min: 0, max: 100 }),
    current: quantity('charging current', 'A', { min: 0.001, max: 1e4 }),
    stored_share: quantity('share of the charge put in that is stored', '%', { min: 10, max: 100 }),
  },
  outputs: { time: 'h', charge: 'Ah' },
  sources: ['si', 'chargeStored'],
  validity: 'A steady charging current within the maker’s limit; chargers reduce it towards the end, so the real time is longer.',
  foundBy: ['how long to charge', 'charger current', 'recharge a battery', 'overnight charging'],
  caution: 'battery',
  checks: [],
  work({ capacity, used_share: used, current, stored_share: stored }) {
    const charge = (capacity * used) / 100;
    const kept = (current * stored) / 100;
    const time = charge / kept;
    return {
      result: { time, charge },
      steps: [
        `Charge to put back: C × d = ${put(capacity, 'Ah')} × ${put(used, '%')} = ${out(charge, 'Ah')}`,
        `Current that is really stored: I × n = ${put(current, 'A')} × ${put(stored, '%')} = ${out(kept, 'A')}`,
        `t = C × d / (I × n) = ${out(charge, 'Ah')} / ${out(kept, 'A')} = ${out(time, 'h')}`,
        'Use the charger the maker names, do not leave it alone, and stop if the battery gets hot.',
      ],
    };
  },
});
