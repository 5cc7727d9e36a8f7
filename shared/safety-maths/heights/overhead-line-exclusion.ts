import { calculation } from '../calculation.js';
import { choice } from '../inputs.js';
import { put } from '../working.js';
import { exclusion } from './overhead-line-table.js';

const voltages = Object.keys(exclusion) as (keyof typeof exclusion)[];

/** How near nothing may come to the wires of an overhead line, by voltage; distance in m. Source: GS6, 4th edition. */
export const overheadLineExclusion = calculation({
  id: 'overhead-line-exclusion',
  title: 'Exclusion distance of an overhead line',
  topic: 'heights',
  formula: 'figures of GS6',
  inputs: { line_voltage: choice('voltage of the line', voltages) },
  outputs: { distance: 'm' },
  sources: ['lineExclusion'],
  validity: 'British figures for work that the line’s operator has agreed to; never a distance at which to put up an antenna.',
  regionDependence: 'Great Britain; other countries set other distances',
  caution: 'line',
  checks: ['exclusion distance from an overhead line'],
  work({ line_voltage: voltage }) {
    const distance = exclusion[voltage];
    return {
      result: { distance },
      steps: [
        `A line of ${voltage}: no person, tool or load may come within ${put(distance, 'm')} of the wires. Current can jump through the air.`,
        'You cannot tell a line’s voltage by looking. Only its operator can say it and agree to any work near it.',
        'An antenna, mast or ladder must stay so far away that no part can come near, even if it falls.',
      ],
    };
  },
});
