import { calculation } from '../calculation.js';
import { fromRegion, list, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The current of all loads on one extension lead, and whether the largest plug fuse (elsewhere: breaker) of the region carries it:
 * I = (P1 + P2 + …) / V. Loads in W, voltage in V (the region's if left out); power in W, current in A. Source: SI Brochure; BS 1362.
 */
export const extensionLeadLoad = calculation({
  id: 'extension-lead-load',
  title: 'All the loads on one extension lead',
  topic: 'plug-fuses',
  formula: 'I = (P1 + P2 + …) / V',
  inputs: {
    loads: list('power of each load', 'W', { min: 0, max: 1e5 }),
    voltage: fromRegion(quantity('supply voltage', 'V', { min: 1, max: 1000 }), 'supplyVoltage'),
  },
  outputs: { power: 'W', current: 'A', within_rating: null },
  sources: ['si', 'bs1362', 'breakers', 'branch'],
  validity:
    'Plain heating loads that run at once on one lead, fully unwound; motors and electronic supplies take more, and the marking on the lead may allow less.',
  foundBy: ['multi-way adaptor', 'block of sockets', 'total load', 'overloaded lead', 'too many plugs'],
  regionDependence: 'mains voltage, and the largest plug fuse or breaker',
  caution: 'plug',
  checks: [],
  work({ loads, voltage }, region) {
    const power = loads.reduce((sum, load) => sum + load, 0);
    const current = power / voltage;
    const largest = Math.max(...region.protection.series);
    return {
      result: { power, current, within_rating: current <= largest },
      steps: [
        `Add the powers: ${loads.map((load) => put(load, 'W')).join(' + ')} = ${put(power, 'W')}`,
        `Divide by the voltage: I = ${put(power, 'W')} / ${put(voltage, 'V')} = ${out(current, 'A')}`,
        `The largest ${region.protection.kind} here is ${put(largest, 'A')}: the total is ${current <= largest ? 'within it' : 'too much'}. The lead’s own marking may allow less, and less still while it is wound up.`,
      ],
    };
  },
});
