import { calculation } from '../calculation.js';
import { list, optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * How far a generator is loaded: P = P1 + P2 + …, S = P / power factor, share = 100 × S / rating. Loads in W, continuous rating in VA,
 * power factor 1 if left out (heaters and lamps; then a rating in watts is the same number). Total in W, apparent power in VA, share in %.
 * Source: terms of IEC 60034-1; the fifth left free is field-day custom.
 */
export const generatorLoad = calculation({
  id: 'generator-load',
  title: 'Loading a generator',
  topic: 'outdoors',
  formula: 'load % = 100 × (P1 + P2 + …) / (power factor × rating)',
  inputs: {
    loads: list('power of each load', 'W', { min: 0, max: 1e5 }),
    rating: quantity('continuous rating on the plate, in VA (or in W, for heaters and lamps alone)', 'VA', { min: 50, max: 1e5 }),
    power_factor: optional(quantity('power factor of the loads, 1 if left out', '', { min: 0.3, max: 1 })),
  },
  outputs: { total: 'W', apparent_power: 'VA', load_share: '%', within_rating: null },
  sources: ['apparentPower', 'powerFactor', 'generatorMargin'],
  validity:
    'Steady loads against the continuous rating, cool and near sea level; motors and chargers surge at switch-on, heat and height take power away.',
  foundBy: ['generator size', 'generator overload', 'field day power', 'portable generator', 'how big a generator'],
  caution: 'generator',
  checks: [{ name: 'sum of loads on a generator', keys: { generator_VA: 'rating' } }],
  work({ loads, rating, power_factor: factor = 1 }) {
    const total = loads.reduce((sum, load) => sum + load, 0);
    const apparent = total / factor;
    const share = (100 * apparent) / rating;
    const within = apparent <= rating;
    return {
      result: { total, apparent_power: apparent, load_share: share, within_rating: within },
      steps: [
        `Add the loads: P = ${loads.map((load) => put(load, 'W')).join(' + ')} = ${out(total, 'W')}`,
        `Apparent power: S = P / power factor = ${out(total, 'W')} / ${put(factor, '')} = ${out(apparent, 'VA')}`,
        `Share of the rating: 100 × S / rating = 100 × ${out(apparent, 'VA')} / ${put(rating, 'VA')} = ${out(share, '%')}`,
        within
          ? 'Within the rating. Leave about a fifth free: electronic supplies take more than their watts, motors surge at switch-on.'
          : 'Too much: the generator overheats or trips. Take loads off.',
      ],
    };
  },
});
