import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { put } from '../working.js';

/**
 * From which power on the UK licence condition asks for an assessment: above 10 W EIRP, or 6.1 W ERP. EIRP in W, may be left out; both
 * thresholds in W, and whether that EIRP is above, null without one. Source: Ofcom's guidance, as other pages quote it.
 */
export const ukAssessmentThreshold = calculation({
  id: 'uk-assessment-threshold',
  title: 'Does a UK station need an EMF assessment?',
  topic: 'exposure',
  formula: 'EIRP > 10 W',
  inputs: { eirp: optional(quantity('the most EIRP your station can radiate', 'W', { min: 0, max: 1e9 })) },
  outputs: { eirp_threshold: 'W', erp_threshold: 'W', assessment_needed: null },
  sources: ['ofcomEmf'],
  validity: 'The UK licence condition only; Ofcom’s guidance says how the power is counted and what an assessment must hold.',
  rule: 'Ofcom licence condition on EMF',
  foundBy: ['Ofcom EMF', '10 watts EIRP', 'do I need an assessment', '6.1 W ERP', 'EMF form'],
  regionDependence: 'UK licences only',
  caution: 'rf',
  checks: [
    {
      name: 'EIRP below which the UK licence condition needs no assessment',
      keys: { eirp_W: 'eirp_threshold', erp_W: 'erp_threshold' },
    },
  ],
  work({ eirp }) {
    const needed = eirp === undefined ? null : eirp > 10;
    return {
      result: { eirp_threshold: 10, erp_threshold: 6.1, assessment_needed: needed },
      steps: [
        `The condition applies above ${put(10, 'W')} EIRP, which is ${put(6.1, 'W')} ERP: 10 W / 1.64 = ${put(6.1, 'W')}`,
        eirp === undefined || needed === null
          ? 'Give the EIRP of your station to compare.'
          : `${put(eirp, 'W')} EIRP is ${needed ? 'above it: the condition asks for an assessment.' : 'not above it: the condition asks for none.'}`,
        'Whatever the power, nobody should be able to touch an antenna while it transmits.',
      ],
    };
  },
});
