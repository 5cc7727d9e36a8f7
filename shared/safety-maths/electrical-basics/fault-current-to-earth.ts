import { calculation } from '../calculation.js';
import { fromRegion, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The current that a fault drives to earth through two resistances in series, such as a rod and the way back through the ground:
 * I = V / (R1 + R2). Voltage in V r.m.s. (the region's mains if left out), resistances in Ω; current in A. Source: Ohm's law, SI Brochure.
 */
export const faultCurrentToEarth = calculation({
  id: 'fault-current-to-earth',
  title: 'Fault current through an earth path',
  topic: 'electrical-basics',
  formula: 'I = V / (R_rod + R_return)',
  inputs: {
    rod_resistance: quantity('resistance of the earth rod', 'ohm', { min: 0.01, max: 1e6 }),
    return_resistance: quantity('resistance of the rest of the path', 'ohm', { min: 0, max: 1e6 }),
    voltage: fromRegion(quantity('supply voltage', 'V', { min: 0.1, max: 1000 }), 'supplyVoltage'),
  },
  outputs: { current: 'A' },
  sources: ['si', 'rcdHalf', 'interrupter'],
  validity: 'A solid fault through fixed resistances; soil dries and rods corrode, so the real resistance changes through the year.',
  foundBy: ['earth rod', 'earth fault', 'ground rod', 'fuse does not blow', 'why an RCD'],
  regionDependence: 'mains voltage, the largest plug fuse or breaker and the shock protection it is held against',
  caution: 'earth',
  checks: [],
  work({ rod_resistance: rod, return_resistance: back, voltage }, { protection, shockProtection }) {
    const total = rod + back;
    const current = voltage / total;
    const trip = out(shockProtection.trip * 1000, 'mA');
    const device = shockProtection.kind === 'RCD' ? 'an RCD' : `a ${shockProtection.kind}`;
    const largest = Math.max(...protection.series);
    return {
      result: { current },
      steps: [
        `Resistances one after the other add: R = R_rod + R_return = ${put(rod, 'ohm')} + ${put(back, 'ohm')} = ${out(total, 'ohm')}`,
        `I = V / R = ${put(voltage, 'V')} / ${out(total, 'ohm')} = ${out(current, 'A')}`,
        current > largest
          ? `That is above ${put(largest, 'A')}, the largest ${protection.kind} here; how soon it cuts off depends on how far above.`
          : `That is not above ${put(largest, 'A')}, the largest ${protection.kind} here: it may never cut off, and the case stays live.`,
        current >= shockProtection.trip
          ? `It is ${out(current / shockProtection.trip, '')} times the ${trip} of ${device} for people: a healthy one trips.`
          : `It is below the ${trip} of ${device} for people, which need not trip.`,
      ],
    };
  },
});
