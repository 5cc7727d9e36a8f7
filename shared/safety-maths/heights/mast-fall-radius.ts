import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { put } from '../working.js';

/**
 * How far from its foot a falling mast can reach, and whether a line is outside that: r = h_mast + h_antenna + margin.
 * All in m; antenna and margin 0 if left out; without a distance there is no verdict. A minimum only: swing, wind and the clearance
 * the line itself needs come on top. Source: club custom, no published source.
 */
export const mastFallRadius = calculation({
  id: 'mast-fall-radius',
  title: 'Where a falling mast can reach',
  topic: 'heights',
  formula: 'r = h_mast + h_antenna + margin',
  inputs: {
    mast_height: quantity('height of the mast', 'm', { min: 0, max: 100 }),
    aerial_above_mast: optional(quantity('height of the antenna above the mast', 'm', { min: 0, max: 50 })),
    margin: optional(quantity('margin', 'm', { min: 0, max: 100 })),
    horizontal_distance: optional(quantity('distance of the line along the ground', 'm', { min: 0, max: 10000 })),
  },
  outputs: { fall_radius: 'm', outside_fall_radius: null },
  sources: ['fall'],
  validity: 'A mast that falls in one piece from its foot on level ground; guys, wind, slopes and loose wires can carry parts further.',
  foundBy: ['falling mast', 'fall zone', 'keep clear', 'antenna near power line', 'mast height'],
  caution: 'line',
  checks: ['can a falling mast reach an overhead line'],
  work({ mast_height: mast, aerial_above_mast: antenna = 0, margin = 0, horizontal_distance: distance }) {
    const radius = mast + antenna + margin;
    const outside = distance === undefined ? null : distance >= radius;
    return {
      result: { fall_radius: radius, outside_fall_radius: outside },
      steps: [
        'Add up all that could fall, and the margin: r = h_mast + h_antenna + margin.',
        `r = ${put(mast, 'm')} + ${put(antenna, 'm')} + ${put(margin, 'm')} = ${put(radius, 'm')}`,
        ...(distance === undefined
          ? []
          : [
              `The line is ${put(distance, 'm')} away: ${outside === true ? 'outside that radius, which is only the least it must be' : 'the mast can reach it'}.`,
            ]),
      ],
    };
  },
});
