import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';
import { nearFieldSteps, nearestUse } from './near-field.js';

/**
 * The distance at which the electric field has fallen to a limit: d = k_E × √(30 × EIRP) / E. EIRP in W, limit in V/m r.m.s., k_E for a
 * reflection as a factor on the field (1 if left out), frequency in MHz (only to tell whether the distance is beyond λ/2π); distance in m.
 * 30 Ω is 377 Ω / 4 π, rounded. Source: OET Bulletin 65, section 2.
 */
export const distanceForFieldLimit = calculation({
  id: 'distance-for-field-limit',
  title: 'Distance for a field-strength limit',
  topic: 'exposure',
  formula: 'd = k_E × √(30 × EIRP) / E',
  inputs: {
    eirp: quantity('average EIRP', 'W', { min: 0, max: 1e9 }),
    limit: quantity('limit of electric field', 'V/m', { min: 0.1, max: 1e4 }),
    field_factor: optional(quantity('factor for a reflection, on the field', '', { min: 1, max: 2 })),
    frequency: optional(quantity('frequency', 'MHz', { min: 0.1, max: 300_000 })),
  },
  outputs: { distance: 'm', beyond_near_field: null },
  sources: ['oet65'],
  validity: 'Free space, straight in front of the antenna, and no nearer than about a sixth of a wavelength; a large antenna needs more.',
  foundBy: ['keep people back', 'limit in volts per metre', 'how far from my antenna', '27.7 V/m distance', 'safe distance'],
  caution: 'rf',
  checks: [],
  work({ eirp, limit, field_factor: factor = 1, frequency }) {
    const distance = (factor * Math.sqrt(30 * eirp)) / limit;
    return {
      result: { distance, beyond_near_field: frequency === undefined ? null : distance >= nearestUse(frequency) },
      steps: [
        'The field falls with the distance; it meets the limit E at d = k_E × √(30 × EIRP) / E.',
        `d = ${put(factor, '')} × √(30 × ${put(eirp, 'W')}) / ${put(limit, 'V/m')} = ${out(distance, 'm')}; round up, never down.`,
        ...nearFieldSteps(distance, frequency),
        'Nobody may come nearer than this while you transmit.',
      ],
    };
  },
});
