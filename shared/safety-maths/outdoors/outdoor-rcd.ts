import { calculation } from '../calculation.js';
import { choice, optional } from '../inputs.js';
import { put } from '../working.js';

/**
 * The greatest rated residual current of the RCD that guards portable equipment outdoors, in mA; null in North America, where ground-fault
 * interrupters are rated another way. Source: BS 7671, regulations 411.3.3 and 415.1.
 */
export const outdoorRcd = calculation({
  id: 'outdoor-rcd',
  title: 'RCD for equipment outdoors',
  topic: 'outdoors',
  formula: 'figure of BS 7671',
  inputs: { use: optional(choice('use', ['portable equipment outdoors'])) },
  outputs: { rated_residual_current: 'mA' },
  sources: ['outdoorRcd'],
  validity: 'Sockets up to 32 A and portable equipment outdoors on the British mains; press the test button before each use.',
  regionDependence: 'no figure for North America, which uses ground-fault interrupters',
  caution: 'mains',
  checks: ['RCD rating for outdoor portable equipment'],
  work(_inputs, region) {
    const current = region.id === 'na' ? null : 30;
    return {
      result: { rated_residual_current: current },
      steps: [
        current === null
          ? 'In North America outdoor sockets are guarded by a ground-fault interrupter (GFCI).'
          : `Equipment outdoors is fed through an RCD rated ${put(current, 'mA')} or less.`,
        'It cuts off fast when current leaks, but you still feel the shock, and it cannot see a current from live to neutral through you.',
      ],
    };
  },
});
