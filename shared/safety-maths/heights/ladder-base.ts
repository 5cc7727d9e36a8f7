import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * How far out a leaning ladder's feet go by the 1 in 4 rule: b = h / 4, h being the height of the point it rests against.
 * Height in m; distance in m. The 1 in 4 rule is 76.0°; exactly 75° would be 7 per cent further out. Source: LA455, INDG455.
 */
export const ladderBase = calculation({
  id: 'ladder-base',
  title: 'How far out the ladder’s feet go',
  topic: 'heights',
  formula: 'b = h / 4',
  inputs: { height: quantity('height of the point of rest', 'm', { min: 0, max: 30 }) },
  outputs: { base: 'm' },
  sources: ['ladder'],
  validity: 'A straight ladder on firm, level ground against an upright wall; a mark on the ladder itself comes first.',
  rule: 'One out for every four up the wall; exactly 75° puts the feet about 7 % further out',
  foundBy: ['one in four', '4 to 1 rule', 'foot of the ladder', 'how far from the wall'],
  caution: 'height',
  checks: ['ladder base distance'],
  work({ height }) {
    const base = height / 4;
    return { result: { base }, steps: ['One out for every four up: b = h / 4.', `b = ${put(height, 'm')} / 4`, `b = ${out(base, 'm')}`] };
  },
});
