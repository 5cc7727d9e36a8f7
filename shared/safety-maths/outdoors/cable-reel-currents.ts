import { calculation } from '../calculation.js';
import { fromRegion, quantity } from '../inputs.js';
import { out, put } from '../working.js';
import { checkPlate, plateInputs } from './cable-reel-plate.js';

/**
 * What a reel's plate means in amperes, and how much is left when it is wound up: I = P / V, share = P_wound / P_unwound. Powers in W,
 * voltage in V (the region's mains if left out); currents in A, share a plain number. Source: arithmetic on the plate.
 */
export const cableReelCurrents = calculation({
  id: 'cable-reel-currents',
  title: 'How much a wound-up reel carries',
  topic: 'outdoors',
  formula: 'I = P / V; share = P_wound / P_unwound',
  inputs: { ...plateInputs, voltage: fromRegion(quantity('supply voltage', 'V', { min: 1, max: 1000 }), 'supplyVoltage') },
  outputs: { factor: '', wound_current: 'A', unwound_current: 'A' },
  sources: ['reelSum', 'reelPlate'],
  validity: 'Plain heating loads at the voltage on the plate; the plate itself comes first.',
  foundBy: ['wound reel', 'coiled extension lead', 'cable reel amps', 'unwind the reel'],
  regionDependence: 'the mains voltage, when no voltage is given',
  caution: 'mains',
  checks: [
    'cable reel derating factor',
    { name: 'reel currents from its plate', keys: { wound_A: 'wound_current', unwound_A: 'unwound_current' } },
  ],
  work({ wound, unwound, voltage }) {
    checkPlate(wound, unwound);
    const factor = wound / unwound;
    return {
      result: { factor, wound_current: wound / voltage, unwound_current: unwound / voltage },
      steps: [
        `Wound up: I = P / V = ${put(wound, 'W')} / ${put(voltage, 'V')} = ${out(wound / voltage, 'A')}`,
        `Unwound: I = P / V = ${put(unwound, 'W')} / ${put(voltage, 'V')} = ${out(unwound / voltage, 'A')}`,
        `Share left: P_wound / P_unwound = ${put(wound, 'W')} / ${put(unwound, 'W')} = ${out(factor, '')}. The drum keeps the heat in: unwind it all.`,
      ],
    };
  },
});
