import { calculation } from '../calculation.js';
import { fromRegion, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** The power a resistive load takes: P = V × I. Current in A, voltage in V r.m.s. (the region's mains if left out); power in W. Source: SI Brochure. */
export const powerFromCurrent = calculation({
  id: 'power-from-current',
  title: 'Power from current and voltage',
  topic: 'electrical-basics',
  formula: 'P = V × I',
  inputs: {
    current: quantity('current', 'A', { min: 0, max: 1e6 }),
    voltage: fromRegion(quantity('voltage', 'V', { min: 0, max: 1e6 }), 'supplyVoltage'),
  },
  outputs: { power: 'W' },
  sources: ['si'],
  validity: 'Direct current, or alternating current into a plain heating load; with a power factor below 1 the true power is less.',
  foundBy: ['how many watts', 'amps to watts', 'socket limit', 'volts times amps'],
  regionDependence: 'the mains voltage, when no voltage is given',
  caution: 'general',
  checks: ['power from current and voltage'],
  work({ current, voltage }) {
    const power = voltage * current;
    return {
      result: { power },
      steps: ['Power is voltage times current: P = V × I.', `P = ${put(voltage, 'V')} × ${put(current, 'A')}`, `P = ${out(power, 'W')}`],
    };
  },
});
