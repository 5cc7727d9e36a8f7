import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * What a reflection does to power when it multiplies the field by a factor: k = k_E². Both plain numbers, 1 to 2 and 1 to 4. Source:
 * OET 65.
 */
export const reflectionPowerFactor = calculation({
  id: 'reflection-power-factor',
  title: 'Reflection: from field to power',
  topic: 'exposure',
  formula: 'k = k_E²',
  inputs: { field_factor: quantity('factor on the field', '', { min: 1, max: 2 }) },
  outputs: { power_factor: '' },
  sources: ['oet65'],
  validity: 'One reflecting surface, which can at most double the field; several surfaces or a corner can do more.',
  foundBy: ['ground reflection', '1.6 and 2.56', 'reflection factor', 'metal roof'],
  caution: 'rf',
  checks: ['ground-reflection power factor'],
  work({ field_factor: factor }) {
    return {
      result: { power_factor: factor * factor },
      steps: [
        'Power goes with the square of the field, so a factor on the field counts twice over on the power.',
        `k = k_E² = ${put(factor, '')}² = ${out(factor * factor, '')}`,
        'OET Bulletin 65 takes 1.6 on the field, 2.56 on power, for ordinary ground; a full reflection gives 2 and 4.',
      ],
    };
  },
});
