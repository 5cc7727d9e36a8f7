import { calculation } from '../calculation.js';
import { choice, optional } from '../inputs.js';
import { put } from '../working.js';

/**
 * The UK workplace limits for carbon monoxide in air: mean of 8 h and mean of 15 min, both in parts per million. Source: EH40, from memory.
 */
export const carbonMonoxideLimits = calculation({
  id: 'carbon-monoxide-limits',
  title: 'Workplace limits for carbon monoxide',
  topic: 'outdoors',
  formula: 'figures of EH40',
  inputs: { gas: optional(choice('gas', ['carbon monoxide'])) },
  outputs: { long_term: 'ppm', short_term: 'ppm' },
  sources: ['coLimit'],
  validity: 'UK workplaces other than mines; no limit for homes, tents or vehicles, and not a level that is safe to sleep in.',
  regionDependence: 'United Kingdom; other countries set other limits',
  caution: 'generator',
  checks: [
    {
      name: 'workplace exposure limit for carbon monoxide',
      keys: { long_term_8h_ppm: 'long_term', short_term_15min_ppm: 'short_term' },
    },
  ],
  work() {
    return {
      result: { long_term: 20, short_term: 100 },
      steps: [
        `Over 8 hours the mean may be ${put(20, 'ppm')} at most; over 15 minutes ${put(100, 'ppm')}.`,
        'You cannot see or smell carbon monoxide. A generator or stove in a tent, hut or garage can kill within minutes, even with the door open.',
        'Headache, sickness or dizziness: everyone out into the open air at once, and call the emergency number.',
      ],
    };
  },
});
