import { calculation } from '../calculation.js';
import { fromRegion, optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The power that may still be added to a cable drum with cable left on it: P_left = V × I_wound − P_used, 0 when it is passed already.
 * Currents from the label in A, load in W, voltage in V r.m.s. (the region's mains if left out); powers in W, the unwound one null unless its
 * current is given. Source: P = V I, SI Brochure; labels after IEC 61242.
 */
export const cableDrumLoad = calculation({
  id: 'cable-drum-load',
  title: 'Load on a part-wound cable drum',
  topic: 'plug-fuses',
  formula: 'P_left = V × I_wound − P_used',
  inputs: {
    wound_rating: quantity('current on the label for the cable wound up', 'A', { min: 0.5, max: 63 }),
    used_power: quantity('power already connected', 'W', { min: 0, max: 1e5 }),
    voltage: fromRegion(quantity('supply voltage', 'V', { min: 12, max: 1000 }), 'supplyVoltage'),
    unwound_rating: optional(quantity('current on the label for the cable pulled right off', 'A', { min: 0.5, max: 63 })),
  },
  outputs: { power_left: 'W', overloaded: null, wound_power: 'W', unwound_power: 'W' },
  sources: ['si', 'drumLabel'],
  validity: 'Plain heating loads on a drum with any cable still wound; there is no rating in between, so half unwound counts as wound.',
  rule: 'The wound figure on the label, until all of the cable is off the drum',
  foundBy: ['cable reel', 'extension reel', 'unwind the drum', 'cable drum gets hot', 'wound and unwound rating'],
  regionDependence: 'the mains voltage, when no voltage is given',
  caution: 'general',
  checks: [],
  work({ wound_rating: wound, used_power: used, voltage, unwound_rating: unwound }) {
    const most = voltage * wound;
    const left = most - used;
    const unwoundPower = unwound === undefined ? null : voltage * unwound;
    return {
      result: { power_left: Math.max(0, left), overloaded: left < 0, wound_power: most, unwound_power: unwoundPower },
      steps: [
        `Cable is still on the drum, so the wound figure counts: P_wound = V × I_wound = ${put(voltage, 'V')} × ${put(wound, 'A')} = ${out(most, 'W')}`,
        left < 0
          ? `${put(used, 'W')} is already ${out(-left, 'W')} too much: switch off and pull all of the cable off, or take load away.`
          : `P_left = P_wound − P_used = ${out(most, 'W')} − ${put(used, 'W')} = ${out(left, 'W')}; round down, never up.`,
        unwoundPower === null
          ? 'Wound cable cannot lose its heat and can melt: pull all of it off before any heavy load.'
          : `Fully unwound the label allows ${out(unwoundPower, 'W')}. Wound cable cannot lose its heat and can melt: pull all of it off first.`,
      ],
    };
  },
});
