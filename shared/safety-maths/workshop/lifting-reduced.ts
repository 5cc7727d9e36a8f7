import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The guideline weight after a reduction: m = m₀ × (1 − r / 100 %), and whether a load is within it (null without a load). Weights in kg,
 * reduction in %. Source: L23 figures.
 */
export const liftingReduced = calculation({
  id: 'lifting-reduced',
  title: 'Lifting often or twisted: the weight that is left',
  topic: 'workshop',
  formula: 'm = m_guide × (1 − r / 100)',
  inputs: {
    mass: quantity('guideline weight', 'kg', { min: 0, max: 25 }),
    reduction: quantity('reduction, for lifting often or twisting', '%', { min: 0, max: 100 }),
    load: optional(quantity('weight of the load', 'kg', { min: 0, max: 1000 })),
  },
  outputs: { mass: 'kg', within_guideline: null },
  sources: ['handlingRules'],
  validity: 'Fit grown-ups with a good grip and firm footing, and one reduction; where two apply, look more closely and take less.',
  foundBy: ['lifting all day', 'loading a van', 'field day set-up', 'reduce the lifting weight'],
  regionDependence: 'British guidance; other countries use other figures',
  caution: 'lifting',
  checks: ['lifting guideline after reductions'],
  work({ mass, reduction, load }) {
    const left = (mass * (100 - reduction)) / 100;
    const within = load === undefined ? null : load <= left;
    return {
      result: { mass: left, within_guideline: within },
      steps: [
        `m = m_guide × (1 − r / 100) = ${put(mass, 'kg')} × (1 − ${put(reduction, '')} / 100) = ${out(left, 'kg')}`,
        load === undefined
          ? 'Give the weight of the load to hold it against that.'
          : within === true
            ? `The load, ${put(load, 'kg')}, is not above it. It is still no safe limit: stop if it hurts.`
            : `The load, ${put(load, 'kg')}, is above it: use a trolley, take it apart, or lift it with somebody.`,
      ],
    };
  },
});
