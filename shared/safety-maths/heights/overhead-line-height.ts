import { calculation } from '../calculation.js';
import { choice } from '../inputs.js';
import { put } from '../working.js';
import { leastHeight } from './overhead-line-table.js';

const voltages = Object.keys(leastHeight) as (keyof typeof leastHeight)[];

/** The least height of an overhead line's wires above ground, by voltage; height in m. Source: UK regulations of 2002, schedule 2. */
export const overheadLineHeight = calculation({
  id: 'overhead-line-height',
  title: 'Least height of an overhead line',
  topic: 'heights',
  formula: 'figures of the 2002 regulations',
  inputs: { line_voltage: choice('voltage of the line', voltages) },
  outputs: { height: 'm' },
  sources: ['lineHeights', 'lineHeight66'],
  validity: 'UK lines as their owner must keep them; a damaged or old line, or one over raised ground, can hang lower.',
  regionDependence: 'United Kingdom; other countries set other heights',
  caution: 'line',
  checks: ['least height of an overhead line'],
  work({ line_voltage: voltage }) {
    const height = leastHeight[voltage];
    return {
      result: { height },
      steps: [
        `A line of ${voltage} must hang at least ${put(height, 'm')} above the ground.`,
        'A ladder, a fishing rod or an upright pole can reach it. Carry long things level and never under a line.',
      ],
    };
  },
});
