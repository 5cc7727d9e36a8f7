import { calculation } from '../calculation.js';
import { choice, optional } from '../inputs.js';
import { put } from '../working.js';
import { liftingZones, people, reaches, zoneNames } from './lifting-table.js';

/**
 * The guideline weight for lifting with both hands, by where the hands are; without a place: between elbow and knuckles, close to the body,
 * which is the best of all. Weight in kg, greatest distance of carrying in m. Source: INDG143 (weights); L23 figures (carrying).
 */
export const liftingGuideline = calculation({
  id: 'lifting-guideline',
  title: 'How heavy is too heavy to lift',
  topic: 'workshop',
  formula: 'figures of the lifting filter',
  inputs: {
    who: choice('who lifts', people),
    hands: optional(choice('where the hands are', zoneNames)),
    reach: optional(choice('how far from the body', reaches)),
  },
  outputs: { mass: 'kg', carrying_distance: 'm' },
  sources: ['liftingFilter', 'handlingRules'],
  validity: 'Fit grown-ups who lift now and then, with a good grip and no twist; not for anybody young, pregnant, unwell or hurt before.',
  rule: 'The British lifting filter: above it, look more closely; it is no safe limit',
  foundBy: ['heavy battery', 'lifting an amplifier', 'manual handling', 'how much can I carry', 'bad back'],
  regionDependence: 'British guidance; other countries use other figures',
  caution: 'lifting',
  checks: [
    'lifting guideline at knuckle height, close to the body',
    { name: 'carrying distance covered by the lifting guideline', inputs: { who: 'men' }, keys: { distance_m: 'carrying_distance' } },
  ],
  work({ who, hands = 'elbow to knuckles', reach = 'close to the body' }) {
    const zone = liftingZones[who][hands];
    const mass = reach === 'close to the body' ? zone.close : zone.stretched;
    return {
      result: { mass, carrying_distance: 10 },
      steps: [
        `For ${who}, hands ${hands}, ${reach}: ${put(mass, 'kg')}.`,
        'When the hands pass through more than one place, the smallest weight counts; from the floor that is the lowest one.',
        `It covers carrying for up to ${put(10, 'm')} without a rest, held against the body.`,
        'If it is heavier, use a trolley, take it apart, or lift it with somebody.',
      ],
    };
  },
});
