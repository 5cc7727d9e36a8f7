import { calculation } from '../calculation.js';
import { choice } from '../inputs.js';
import { put } from '../working.js';
import { consultWithin } from './overhead-line-table.js';

const supports = Object.keys(consultWithin) as (keyof typeof consultWithin)[];

/** How near to an overhead line work must not be planned without its operator, by the line's supports; distance in m. Source: GS6. */
export const overheadLineConsult = calculation({
  id: 'overhead-line-consult',
  title: 'When to ask the line’s operator',
  topic: 'heights',
  formula: 'figures of GS6',
  inputs: { support: choice('what carries the line', supports) },
  outputs: { distance: 'm' },
  sources: ['lineConsult'],
  validity: 'British guidance, measured along the ground from the line; an antenna or mast that could fall or swing near needs more.',
  regionDependence: 'Great Britain; elsewhere ask the network operator',
  caution: 'line',
  checks: ['distance inside which to consult the line operator'],
  work({ support }) {
    const distance = consultWithin[support];
    return {
      result: { distance },
      steps: [
        `A line on a ${support}: nearer than ${put(distance, 'm')} along the ground, ask its operator before any work.`,
        'Being further off is not permission. Ask as well whenever a mast, ladder, pole or wire could fall or swing towards the line.',
      ],
    };
  },
});
