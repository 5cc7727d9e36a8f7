import { calculation } from '../calculation.js';
import { CalculationInputError, optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The short-circuit current of equal batteries side by side: I = N × E / r. Number whole, 1 to 20; voltage of each in V, internal resistance
 * of each in mΩ, capacity of each in Ah; currents in A, capacity of the group in Ah (null unless given). Source: Ohm's law.
 */
export const batteriesInParallel = calculation({
  id: 'batteries-in-parallel',
  title: 'Short-circuit current of batteries in parallel',
  topic: 'batteries',
  formula: 'I = N × E / r',
  inputs: {
    number: quantity('number of batteries', '', { min: 1, max: 20 }),
    emf: quantity('voltage of each without load', 'V', { min: 0, max: 1000 }),
    internal_resistance: quantity('internal resistance of each', 'mohm', { min: 0.01, max: 1e6 }),
    capacity: optional(quantity('capacity of each', 'Ah', { min: 0, max: 1e4 })),
  },
  outputs: { current: 'A', current_of_one: 'A', total_capacity: 'Ah' },
  sources: ['si'],
  validity: 'Equal batteries, equally charged, shorted right at their terminals; leads and joints reduce the current.',
  foundBy: ['two batteries side by side', 'joining batteries', 'parallel batteries', 'battery bank', 'fault current'],
  caution: 'battery',
  checks: [],
  work({ number, emf, internal_resistance: inside, capacity }) {
    if (!Number.isInteger(number)) throw new CalculationInputError('number', 'is not a whole number of batteries');
    const one = (emf * 1000) / inside;
    const total = capacity === undefined ? null : number * capacity;
    return {
      result: { current: number * one, current_of_one: one, total_capacity: total },
      steps: [
        `One battery: I = E / r = ${put(emf, 'V')} / ${put(inside, 'mohm')} = ${out(one, 'A')}`,
        `All of them feed the same fault: I = N × E / r = ${put(number, '')} × ${out(one, 'A')} = ${out(number * one, 'A')}`,
        ...(total === null ? [] : [`The voltage stays ${put(emf, 'V')}; the capacities add up to ${out(total, 'Ah')}.`]),
        'Each battery needs its own fuse, or one faulty battery is fed by all the others.',
      ],
    };
  },
});
