import { calculation } from '../calculation.js';
import { fromRegion, optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The greatest loop impedance with which a fault to earth still opens a fuse or breaker in time: Z = c × U / I. Voltage to earth in V (the
 * region's mains if left out), c a plain number for a low supply (0.95 if left out), I the current that opens it in time, in A; impedance
 * in Ω, for conductors at working temperature. Source: BS 7671, table 41.3.
 */
export const loopImpedanceLimit = calculation({
  id: 'loop-impedance-limit',
  title: 'Greatest earth-fault loop impedance',
  topic: 'electric-shock',
  formula: 'Z ≤ c × U / I',
  inputs: {
    operating_current: quantity('current that opens the fuse or breaker in time', 'A', { min: 0.01, max: 1e5 }),
    voltage_to_earth: fromRegion(quantity('voltage to earth', 'V', { min: 1, max: 1000 }), 'supplyVoltage'),
    c_min: optional(quantity('factor for a low supply voltage, 0.95 if left out', '', { min: 0.5, max: 1 })),
  },
  outputs: { impedance: 'ohm' },
  sources: ['loopLimit'],
  validity: 'Conductors at working temperature; a loop measured cold must be well below it, as wires gain resistance when they warm up.',
  foundBy: ['loop impedance', 'Zs', 'earth loop', 'will the breaker trip', 'maximum Zs'],
  regionDependence: 'the mains voltage, when none is given; the factor 0.95 is British',
  caution: 'mains',
  checks: ['greatest loop impedance for a circuit-breaker'],
  work({ operating_current: current, voltage_to_earth: voltage, c_min: factor = 0.95 }) {
    const impedance = (factor * voltage) / current;
    return {
      result: { impedance },
      steps: [
        `To open in time, the fuse or breaker needs ${put(current, 'A')}; a type B breaker, for one, needs five times its rating.`,
        `Z = c × U / I = ${put(factor, '')} × ${put(voltage, 'V')} / ${put(current, 'A')} = ${out(impedance, 'ohm')}`,
        'With a higher impedance the fault current is too small and the case stays live for longer. An electrician measures the loop.',
      ],
    };
  },
});
