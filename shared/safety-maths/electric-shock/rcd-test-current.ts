import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The current that an instrument drives to test an RCD: I = k × I_Δn. Rated residual current in mA, multiple a plain number; current in mA.
 * Source: IEC 61008-1 and IEC 61009-1.
 */
export const rcdTestCurrent = calculation({
  id: 'rcd-test-current',
  title: 'Test current of an RCD',
  topic: 'electric-shock',
  formula: 'I = k × I_Δn',
  inputs: {
    rated_residual_current: quantity('rated residual current of the RCD', 'mA', { min: 1, max: 5000 }),
    multiple: quantity('multiple of the rated current', '', { min: 0, max: 10 }),
  },
  outputs: { current: 'mA' },
  sources: ['rcdTestCurrent'],
  validity: 'The current an instrument is set to; a tester’s maker or the standard may set another current for small RCDs.',
  regionDependence: 'IEC devices, as in the UK and Europe; North American ground-fault interrupters follow another standard',
  caution: 'mains',
  checks: ['test current of a 30 mA RCD'],
  work({ rated_residual_current: rating, multiple }) {
    const current = multiple * rating;
    return {
      result: { current },
      steps: [
        `Test current: I = k × I_Δn = ${put(multiple, '')} × ${put(rating, 'mA')} = ${out(current, 'mA')}`,
        'Such a test is made with an instrument, by an electrician. Anybody can press the test button of the RCD, as its maker says.',
      ],
    };
  },
});
