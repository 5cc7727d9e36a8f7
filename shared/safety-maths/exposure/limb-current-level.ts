import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { put } from '../working.js';

/**
 * The most current through any limb of a member of the public: 45 mA from 10 to 110 MHz. Frequency in MHz, current in mA. Source:
 * 1999/519/EC.
 */
export const limbCurrentLevel = calculation({
  id: 'limb-current-level',
  title: 'Limb current allowed for the public',
  topic: 'exposure',
  formula: 'I_limb ≤ 45 mA',
  inputs: { frequency: quantity('frequency', 'MHz', { min: 10, max: 110 }) },
  outputs: { current: 'mA' },
  sources: ['eu1999'],
  validity: 'The public, from 10 to 110 MHz, averaged over 6 minutes; there is no such level at other frequencies.',
  rule: 'Council Recommendation 1999/519/EC',
  regionDependence: 'EU recommendation; other regions have rules of their own',
  caution: 'rf',
  checks: ['limb-current reference level, general public'],
  work({ frequency }) {
    return {
      result: { current: 45 },
      steps: [
        `At ${put(frequency, 'MHz')}, as from 10 to 110 MHz throughout: at most I = ${put(45, 'mA')} through any limb.`,
        'Touching a wire or mast that carries radio power can drive far more than that: nobody should be able to reach it.',
      ],
    };
  },
});
