import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

const gravity = 9.80665;

/**
 * How fast a dropped tool is when it has fallen a height, and how long that takes: v = √(2 g h), t = v / g, g = 9.80665 m/s². Height in m;
 * speed in m/s, time in s. Without air resistance. Source: 3rd CGPM, standard gravity.
 */
export const droppedToolSpeed = calculation({
  id: 'dropped-tool-speed',
  title: 'How fast a dropped tool lands',
  topic: 'heights',
  formula: 'v = √(2 × g × h)',
  inputs: { height: quantity('height it falls from', 'm', { min: 0, max: 100 }) },
  outputs: { speed: 'm/s', time: 's' },
  sources: ['gravity'],
  validity: 'A compact, heavy thing such as a spanner, let go and not thrown; air slows light and flat things.',
  foundBy: ['dropped spanner', 'falling tool', 'falling object', 'hard hat', 'stand under a mast'],
  caution: 'height',
  checks: ['speed of a dropped tool'],
  work({ height }) {
    const speed = Math.sqrt(2 * gravity * height);
    const time = speed / gravity;
    return {
      result: { speed, time },
      steps: [
        `Speed at the ground: v = √(2 × g × h) = √(2 × ${put(gravity, 'm/s²')} × ${put(height, 'm')}) = ${out(speed, 'm/s')}`,
        `That is ${out(speed * 3.6, 'km/h')}, after t = v / g = ${out(time, 's')}: too quick to dodge.`,
        'Nobody stands below. Tie tools on, and wear a helmet.',
      ],
    };
  },
});
