import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * How long a battery runs a station that transmits part of the time: I_av = I_tx × d + I_rx × (1 − d), t = C × u / I_av. Currents in A,
 * share of transmitting d and usable share u in % (u is 100 % if left out), capacity in Ah; time in h, average current in A.
 * Source: SI Brochure (charge is current times time).
 */
export const runTimeTransmitReceive = calculation({
  id: 'run-time-transmit-receive',
  title: 'Run time with transmit and receive',
  topic: 'batteries',
  formula: 'I_av = I_tx × d + I_rx × (1 − d); t = C × u / I_av',
  inputs: {
    transmit_current: quantity('current while transmitting', 'A', { min: 0.001, max: 1000 }),
    receive_current: quantity('current while receiving', 'A', { min: 0.001, max: 1000 }),
    transmit_share: quantity('share of the time spent transmitting', '%', { min: 0, max: 100 }),
    capacity: quantity('capacity of the battery', 'Ah', { min: 0, max: 1e5 }),
    usable_share: optional(quantity('share of the capacity that may be used', '%', { min: 0, max: 100 })),
  },
  outputs: { time: 'h', average_current: 'A' },
  sources: ['si'],
  validity:
    'Average currents of a whole session; cold, age and a large current leave fewer ampere-hours than the label says, so plan for less.',
  foundBy: ['field day battery', 'portable operating', 'duty cycle battery', 'how long will my radio run', 'contest battery'],
  caution: 'battery',
  checks: [],
  work({ transmit_current: tx, receive_current: rx, transmit_share: share, capacity, usable_share: usable = 100 }) {
    const average = (tx * share) / 100 + rx * (1 - share / 100);
    const charge = (capacity * usable) / 100;
    const time = charge / average;
    return {
      result: { time, average_current: average },
      steps: [
        `Average current: I_av = I_tx × d + I_rx × (1 − d) = ${put(tx, 'A')} × ${put(share, '%')} + ${put(rx, 'A')} × ${put(100 - share, '%')} = ${out(average, 'A')}`,
        `Charge that may be used: C × u = ${put(capacity, 'Ah')} × ${put(usable, '%')} = ${out(charge, 'Ah')}`,
        `Time: t = C × u / I_av = ${out(charge, 'Ah')} / ${out(average, 'A')} = ${out(time, 'h')}`,
        'The fuse and the lead must stand the transmit current, not the average.',
      ],
    };
  },
});
