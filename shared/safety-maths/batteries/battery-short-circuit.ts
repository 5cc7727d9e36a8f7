import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The current of a short-circuited battery: I = E / (r + R). Electromotive force in V, internal resistance in Ω, resistance of the leads in Ω
 * (0 if left out); current in A. Source: SI Brochure (Ohm's law).
 */
export const batteryShortCircuit = calculation({
  id: 'battery-short-circuit',
  title: 'Short-circuit current of a battery',
  topic: 'batteries',
  formula: 'I = E / (r + R)',
  inputs: {
    emf: quantity('voltage without load', 'V', { min: 0, max: 1e4 }),
    internal_resistance: quantity('internal resistance', 'ohm', { min: 1e-6, max: 1e6 }),
    lead_resistance: optional(quantity('resistance of the leads, out and back', 'ohm', { min: 0, max: 1e6 })),
  },
  outputs: { current: 'A' },
  sources: ['si'],
  validity:
    'The first moment of a short at the terminals; the battery then heats up, and it may burst, catch fire or melt what touches it.',
  foundBy: ['short circuit', 'spanner across a battery', 'fault current', 'why fuse a battery', 'dropped tool'],
  caution: 'battery',
  checks: ['battery short-circuit current', 'battery short-circuit current with lead resistance'],
  work({ emf, internal_resistance: inside, lead_resistance: leads }) {
    const current = emf / (inside + (leads ?? 0));
    return {
      result: { current },
      steps: [
        leads === undefined
          ? 'Only the internal resistance limits the current: I = E / r.'
          : 'The internal resistance and the leads limit the current: I = E / (r + R).',
        leads === undefined
          ? `I = ${put(emf, 'V')} / ${put(inside, 'ohm')}`
          : `I = ${put(emf, 'V')} / (${put(inside, 'ohm')} + ${put(leads, 'ohm')})`,
        `I = ${out(current, 'A')}`,
      ],
    };
  },
});
