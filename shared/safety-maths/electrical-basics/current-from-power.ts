import { calculation } from '../calculation.js';
import { fromRegion, optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The current a load takes: I = P / V, or I = P / (V × pf) for a load with a power factor, such as a motor or a simple power supply.
 * Power in W, voltage in V r.m.s. (the region's mains if left out), power factor 0.05 to 1 (1 if left out); current in A.
 * Source: SI Brochure (watt, volt, ampere); IEC 60050-131 (power factor).
 */
export const currentFromPower = calculation({
  id: 'current-from-power',
  title: 'Current from power and voltage',
  topic: 'electrical-basics',
  formula: 'I = P / (V × pf)',
  inputs: {
    power: quantity('power of the load', 'W', { min: 0, max: 1e6 }),
    voltage: fromRegion(quantity('supply voltage', 'V', { min: 0.1, max: 1e6 }), 'supplyVoltage'),
    power_factor: optional(quantity('power factor', '', { min: 0.05, max: 1 })),
  },
  outputs: { current: 'A' },
  sources: ['si', 'powerFactor'],
  validity:
    'Direct current, or alternating current into a plain heating load; motors and simple power supplies take more, so give their power factor.',
  foundBy: ['how many amps', 'watts to amps', 'soldering iron', 'rating plate'],
  regionDependence: 'the mains voltage, when no voltage is given',
  caution: 'plug',
  checks: ['current from power and voltage', 'current from power, voltage and power factor'],
  work({ power, voltage, power_factor: factor }) {
    const current = power / (voltage * (factor ?? 1));
    const steps =
      factor === undefined
        ? ['Current is power divided by voltage: I = P / V.', `I = ${put(power, 'W')} / ${put(voltage, 'V')}`]
        : [
            'Current is power divided by voltage and power factor: I = P / (V × pf).',
            `I = ${put(power, 'W')} / (${put(voltage, 'V')} × ${put(factor, '')})`,
          ];
    return { result: { current }, steps: [...steps, `I = ${out(current, 'A')}`] };
  },
});
