import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** Where IEC 61010-1 draws its line for the pins of a plug, C; it matters above 60 V. */
const laboratoryLimit = 45e-6;

/**
 * The charge on a capacitor: Q = C × V. Capacitance in F, voltage in V; charge in C. Source: OpenStax College Physics; IEC 61010-1,
 * 6.3.1.
 */
export const residualCharge = calculation({
  id: 'residual-charge',
  title: 'Charge left on a capacitor',
  topic: 'capacitors',
  formula: 'Q = C × V',
  inputs: {
    capacitance: quantity('capacitance', 'F', { min: 0, max: 1e4 }),
    voltage: quantity('voltage still on it', 'V', { min: 0, max: 1e6 }),
  },
  outputs: { charge: 'C' },
  sources: ['capacitor', 'plugLaboratory'],
  validity: 'Any capacitor of known value; the marked value of an old one can be well out.',
  foundBy: ['coulombs', 'microcoulombs', 'capacitance times voltage', '45 microcoulombs'],
  caution: 'hv',
  checks: ['residual charge on a capacitor'],
  work({ capacitance, voltage }) {
    const charge = capacitance * voltage;
    return {
      result: { charge },
      steps: [
        'Charge is capacitance times voltage: Q = C × V.',
        `Q = ${put(capacitance * 1e6, 'µF')} × ${put(voltage, 'V')} = ${out(charge * 1e6, 'µC')}`,
        `For scale: IEC 61010-1 lets a plug hold ${put(laboratoryLimit * 1e6, 'µC')}, or ${put(60, 'V')}, 5 s after it is pulled out.`,
        'That is a test for makers, not leave to touch: a capacitor is dead only when a competent person has proved it.',
      ],
    };
  },
});
