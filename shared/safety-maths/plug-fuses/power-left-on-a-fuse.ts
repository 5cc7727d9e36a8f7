import { calculation } from '../calculation.js';
import { fromRegion, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The power that may still be added before a fuse or breaker reaches its rating: P_left = V × I_fuse − P_used, 0 when it is passed already.
 * Rating in A, load in W, voltage in V r.m.s. (the region's mains if left out); power in W. Source: P = V I, SI Brochure; BS 1362.
 */
export const powerLeftOnAFuse = calculation({
  id: 'power-left-on-a-fuse',
  title: 'Power left on a fused lead',
  topic: 'plug-fuses',
  formula: 'P_left = V × I_fuse − P_used',
  inputs: {
    fuse: quantity('rating of the fuse or breaker', 'A', { min: 0.5, max: 125 }),
    used_power: quantity('power already connected', 'W', { min: 0, max: 1e5 }),
    voltage: fromRegion(quantity('supply voltage', 'V', { min: 1, max: 1000 }), 'supplyVoltage'),
  },
  outputs: { power_left: 'W', overloaded: null },
  sources: ['si', 'bs1362', 'breakers', 'branch'],
  validity: 'Plain heating loads that run at once; motors and electronic supplies take more, and a lower marking on the lead is the limit.',
  rule: 'Up to the rating itself, with nothing held back',
  foundBy: ['how much more', 'headroom', 'spare power', 'add another appliance', 'shared socket'],
  regionDependence: 'mains voltage; a plug fuse in the UK, a breaker elsewhere',
  caution: 'plug',
  checks: [],
  work({ fuse, used_power: used, voltage }) {
    const most = voltage * fuse;
    const left = most - used;
    return {
      result: { power_left: Math.max(0, left), overloaded: left < 0 },
      steps: [
        `Most the fuse allows: P_max = V × I_fuse = ${put(voltage, 'V')} × ${put(fuse, 'A')} = ${out(most, 'W')}`,
        left < 0
          ? `${put(used, 'W')} is already ${out(-left, 'W')} too much: nothing may be added, and something must come off.`
          : `P_left = P_max − P_used = ${out(most, 'W')} − ${put(used, 'W')} = ${out(left, 'W')}; round down, never up.`,
        'If the lead or its sockets are marked with less, that lower figure is the limit.',
      ],
    };
  },
});
