import { calculation } from '../calculation.js';
import { fromRegion, list, optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';
import { thinnestFor } from './flex-table.js';
import { smallestNotBelow } from './listed-rating.js';

/**
 * Fuse and flex for a heating load: I = P / V, the smallest fuse in stock not below I, then the thinnest flex rated at least as high as
 * that fuse. Power in W; voltage in V r.m.s. (the region's mains if left out); fuses in A (3, 5 and 13 A if left out); results in A and
 * mm², null when there is none. Source: BS 1362; IET Code of Practice, table VII.1.
 */
export const flexForLoad = calculation({
  id: 'flex-for-load',
  title: 'Fuse and flex for an appliance',
  topic: 'plug-fuses',
  formula: 'I = P / V ≤ I_fuse ≤ I_flex',
  inputs: {
    power: quantity('power on the rating plate', 'W', { min: 0, max: 1e5 }),
    voltage: fromRegion(quantity('supply voltage', 'V', { min: 1, max: 1000 }), 'supplyVoltage'),
    fuses: optional(list('plug fuses in stock', 'A', { min: 0.25, max: 13 })),
  },
  outputs: { current: 'A', fuse: 'A', conductor_area: 'mm²' },
  sources: ['bs1362', 'flexCurrent', 'loadFuseCable'],
  validity: 'Plain heating loads on UK plugs, with the flex stretched out; the maker’s fuse and flex come first.',
  rule: 'Smallest listed fuse, then the IET Code of Practice table',
  foundBy: ['which flex', 'new flex', 'replacement lead', 'cable for a heater', 'wire a plug'],
  regionDependence: 'UK plugs; the mains voltage, when no voltage is given',
  caution: 'plug',
  checks: [],
  work({ power, voltage, fuses = [3, 5, 13] }) {
    const current = power / voltage;
    const fuse = smallestNotBelow(current, fuses);
    const area = fuse === null ? null : (thinnestFor(fuse)?.area ?? null);
    return {
      result: { current, fuse, conductor_area: area },
      steps: [
        `Running current: I = P / V = ${put(power, 'W')} / ${put(voltage, 'V')} = ${out(current, 'A')}`,
        fuse === null
          ? `None of ${fuses.map((one) => put(one, 'A')).join(', ')} is large enough: the load needs a circuit of its own.`
          : `The smallest fuse that is not below it: ${put(fuse, 'A')}`,
        area === null
          ? 'So no flex is chosen.'
          : `The thinnest flex rated at least as high as the fuse: ${put(area, 'mm²')}. The fuse protects the flex from fire.`,
      ],
    };
  },
});
