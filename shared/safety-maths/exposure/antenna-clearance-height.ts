import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * How high an antenna must be above ground where people walk below: h = h_person + √(k × EIRP / (4 π S)). EIRP in W, limit in W/m²,
 * height of a person in m (1.8 if left out), k for a reflection from the ground (2.56 if left out); height in m. Source: OET Bulletin
 * 65, section 2; a transceiver maker's table.
 */
export const antennaClearanceHeight = calculation({
  id: 'antenna-clearance-height',
  title: 'Height of an antenna above people',
  topic: 'exposure',
  formula: 'h = h_p + √(k × EIRP / (4 π S))',
  inputs: {
    eirp: quantity('average EIRP', 'W', { min: 0, max: 1e9 }),
    limit: quantity('limit of power density', 'W/m²', { min: 1e-6, max: 1e6 }),
    person_height: optional(quantity('height of a person', 'm', { min: 0.5, max: 2.5 })),
    reflection_power_factor: optional(quantity('factor for a reflection, on power', '', { min: 1, max: 4 })),
  },
  outputs: { height: 'm' },
  sources: ['oet65', 'clearanceTable'],
  validity:
    'Flat open ground with people standing on it, at the full EIRP downwards; it fails close to the antenna, and people on balconies, ladders and roofs are nearer.',
  foundBy: ['how high should my antenna be', 'antenna over a garden', 'people under the antenna', 'clearance height'],
  caution: 'rf',
  checks: ['clearance height of an aerial above people 1.8 m tall'],
  work({ eirp, limit, person_height: person = 1.8, reflection_power_factor: factor = 2.56 }) {
    const clearance = Math.sqrt((factor * eirp) / (4 * Math.PI * limit));
    return {
      result: { height: person + clearance },
      steps: [
        `Distance to keep: √(k × EIRP / (4 π S)) = √(${put(factor, '')} × ${put(eirp, 'W')} / (4 π × ${put(limit, 'W/m²')})) = ${out(clearance, 'm')}`,
        `h = ${put(person, 'm')} + ${out(clearance, 'm')} = ${out(person + clearance, 'm')}; round up, never down.`,
        'The lowest part of the antenna counts, and so does the tallest person who can stand there.',
      ],
    };
  },
});
