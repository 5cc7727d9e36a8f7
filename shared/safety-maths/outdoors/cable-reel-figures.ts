import { calculation } from '../calculation.js';
import { choice, optional } from '../inputs.js';
import { put } from '../working.js';

/**
 * Usual figures of UK cable reels: load allowed wound up by one maker's advice in W, temperature of the cut-out in °C, currents of a usual
 * 13 A reel wound and unwound in A. Source: a reel maker's advice; usual rating plates, from memory.
 */
export const cableReelFigures = calculation({
  id: 'cable-reel-figures',
  title: 'Usual figures of cable reels',
  topic: 'outdoors',
  formula: 'figures of makers',
  inputs: { reel: optional(choice('kind of reel', ['13 A reel'])) },
  outputs: { wound_power: 'W', cutout_temperature: '°C', wound_current: 'A', unwound_current: 'A' },
  sources: ['reelAdvice', 'reelUsual'],
  validity: 'Usual UK reels, as an example; the plate on the reel counts, and many allow less.',
  regionDependence: 'UK reels',
  caution: 'mains',
  checks: [
    { name: "load allowed on a wound reel (maker's advice)", keys: { power_W: 'wound_power' } },
    { name: 'cut-out temperature of a reel', keys: { temperature_C: 'cutout_temperature' } },
    { name: 'usual UK 13 A reel', keys: { wound_A: 'wound_current', unwound_A: 'unwound_current' } },
  ],
  work() {
    return {
      result: { wound_power: 1000, cutout_temperature: 65, wound_current: 5, unwound_current: 13 },
      steps: [
        `A usual 13 A reel is marked ${put(5, 'A')} wound and ${put(13, 'A')} unwound. One maker allows up to ${put(1000, 'W')} wound.`,
        `Some have a cut-out that opens at about ${put(65, '°C')}. It is the last guard against fire, not a way to find the limit.`,
        'Unwind all of it, and go by the plate on the reel.',
      ],
    };
  },
});
