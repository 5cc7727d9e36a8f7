import { calculation } from '../calculation.js';
import { choice, quantity } from '../inputs.js';
import { put } from '../working.js';
import { checkPlate, plateInputs } from './cable-reel-plate.js';

/**
 * Whether a load is within what a reel's plate allows for the state it is in: P ≤ P_plate. Powers in W. A reel that is only partly unwound
 * counts as wound. Source: arithmetic on the plate.
 */
export const cableReelLoad = calculation({
  id: 'cable-reel-load',
  title: 'Is the load too much for the reel',
  topic: 'outdoors',
  formula: 'P ≤ P_plate',
  inputs: {
    state: choice('state of the reel', ['wound', 'unwound']),
    load: quantity('all the loads together', 'W', { min: 0, max: 1e5 }),
    ...plateInputs,
  },
  outputs: { acceptable: null, limit: 'W' },
  sources: ['reelSum', 'reelPlate'],
  validity: 'Plain heating loads and a sound reel with a plate; a reel only partly unwound counts as wound.',
  foundBy: ['cable reel', 'extension reel', 'cable drum', 'kettle on a reel', 'reel overheating'],
  caution: 'mains',
  checks: ["is a load within the reel's rating"],
  work({ state, load, wound, unwound }) {
    checkPlate(wound, unwound);
    const limit = state === 'wound' ? wound : unwound;
    return {
      result: { acceptable: load <= limit, limit },
      steps: [
        `The plate allows ${put(limit, 'W')} ${state}. Needed: P ≤ P_plate.`,
        load <= limit
          ? `${put(load, 'W')} ≤ ${put(limit, 'W')}: within the plate.`
          : `${put(load, 'W')} > ${put(limit, 'W')}: too much. The cable can overheat, melt and catch fire.`,
        'Unwind the whole cable whatever the load; if it feels warm, switch off.',
      ],
    };
  },
});
