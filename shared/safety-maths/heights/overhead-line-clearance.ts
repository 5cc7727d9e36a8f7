import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * How far along the ground from an overhead line the foot of an antenna stands, by a multiple of its full height: d = k × h. Height in m,
 * multiplier from 1.5 (2 if left out: the more cautious of the two in use); distance in m. Source: CPSC advice (1.5); club custom (2).
 */
export const overheadLineClearance = calculation({
  id: 'overhead-line-clearance',
  title: 'How far an antenna stays from a power line',
  topic: 'heights',
  formula: 'd = k × h',
  inputs: {
    height: quantity('full height of the antenna and its support', 'm', { min: 0, max: 100 }),
    multiplier: optional(quantity('multiplier in the rule, 2 if left out', '', { min: 1.5, max: 10 })),
  },
  outputs: { distance: 'm' },
  sources: ['lineMultiple', 'lineMultipleClub'],
  validity: 'Level ground and a mast that falls in one piece; slopes, guys and long wires need more, and the operator may ask for more.',
  rule: 'Twice the full height; US consumer advice is one and a half times',
  foundBy: ['power line', 'overhead cable', 'antenna near a line', 'twice the height', 'how close to a pylon'],
  caution: 'line',
  checks: [],
  work({ height, multiplier = 2 }) {
    const distance = multiplier * height;
    return {
      result: { distance },
      steps: [
        'Full height counts everything that stands up: mast, antenna and all.',
        `Distance along the ground: d = k × h = ${put(multiplier, '')} × ${put(height, 'm')} = ${out(distance, 'm')}, or ${out(distance / 0.3048, 'ft')}`,
        'Choose another place if there is less room. Whatever the sum says, ask the network operator before any work near a line.',
      ],
    };
  },
});
