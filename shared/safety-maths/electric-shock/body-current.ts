import { calculation } from '../calculation.js';
import { fromRegion, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The current through a body: I = V / Z. Touch voltage in V r.m.s. (the region's mains if left out), impedance of the path in Ω; current
 * in mA. The impedance falls as the voltage rises and differs between people: the result is a size, not a forecast. Source: IEC 60479-1.
 */
export const bodyCurrent = calculation({
  id: 'body-current',
  title: 'Current through a body',
  topic: 'electric-shock',
  formula: 'I = V / Z',
  inputs: {
    touch_voltage: fromRegion(quantity('touch voltage', 'V', { min: 0, max: 1e5 }), 'supplyVoltage'),
    impedance: quantity('impedance of the path through the body', 'ohm', { min: 100, max: 1e7 }),
  },
  outputs: { current: 'mA' },
  sources: ['body', 'si'],
  regionDependence: 'the mains voltage, when no voltage is given',
  validity:
    'A first estimate by Ohm’s law: the impedance of a body falls with voltage, wet skin and a larger area of touch, and differs from person to person.',
  foundBy: ['electric shock', 'current through a person', 'how dangerous is a shock', 'body resistance', 'touch a live wire'],
  caution: 'rescue',
  checks: ['body current from touch voltage and impedance'],
  work({ touch_voltage: voltage, impedance }) {
    const current = (voltage / impedance) * 1000;
    return {
      result: { current },
      steps: [
        'Current is voltage divided by the impedance of the path: I = V / Z.',
        `I = ${put(voltage, 'V')} / ${put(impedance, 'ohm')} = ${out(current / 1000, 'A')}`,
        `I = ${out(current, 'mA')}`,
      ],
    };
  },
});
