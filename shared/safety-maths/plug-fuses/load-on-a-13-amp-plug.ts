import { calculation } from '../calculation.js';
import { fromRegion, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * Whether a load stays within the 13 A of a UK plug: I = P / V ≤ 13 A. Power in W, voltage in V r.m.s. (the region's mains if left out);
 * current in A. Source: SI Brochure; BS 1362 (13 A is the highest rating).
 */
export const loadOn13AmpPlug = calculation({
  id: 'load-on-a-13-amp-plug',
  title: 'Does a load fit a 13 A plug?',
  topic: 'plug-fuses',
  formula: 'I = P / V ≤ 13 A',
  inputs: {
    power: quantity('power on the rating plate', 'W', { min: 0, max: 1e5 }),
    voltage: fromRegion(quantity('supply voltage', 'V', { min: 1, max: 1000 }), 'supplyVoltage'),
  },
  outputs: { current: 'A', fits: null },
  sources: ['si', 'plugFuse'],
  validity: 'Plain heating loads on UK plugs; heaters sold as 3 kW on a 13 A plug are rated at 240 V, where they take 12.5 A.',
  foundBy: ['13 amp plug', '3 kilowatt heater', 'biggest load', 'kettle', 'too much for a socket'],
  regionDependence: 'UK plugs; the mains voltage, when no voltage is given',
  caution: 'plug',
  checks: ['does a load fit a 13 A plug at 230 V'],
  work({ power, voltage }) {
    const current = power / voltage;
    const fits = current <= 13;
    return {
      result: { current, fits },
      steps: [
        `I = P / V = ${put(power, 'W')} / ${put(voltage, 'V')} = ${out(current, 'A')}`,
        fits
          ? `That is not above ${put(13, 'A')}: it fits, if nothing else runs from the same plug.`
          : `That is above ${put(13, 'A')}: strictly it does not fit. An overloaded plug runs hot and can start a fire.`,
      ],
    };
  },
});
