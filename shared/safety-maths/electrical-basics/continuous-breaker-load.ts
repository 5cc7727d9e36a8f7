import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The long-running load a North American breaker may carry: 80 % of its rating. Rating in A; current in A. "Continuous" means three hours
 * or more. Source: NFPA 70, 210.20(A).
 */
export const continuousBreakerLoad = calculation({
  id: 'continuous-breaker-load',
  title: 'Long-running load on a North American breaker',
  topic: 'electrical-basics',
  formula: 'I = 0.8 × I_breaker',
  inputs: { breaker_rating: quantity('rating of the breaker', 'A', { min: 1, max: 400 }) },
  outputs: { continuous_current: 'A' },
  sources: ['continuousLoad'],
  validity: 'North American branch circuits with loads that run for three hours or more; shorter loads may use the full rating.',
  rule: '80 % rule of the National Electrical Code',
  foundBy: ['80 per cent rule', 'continuous load', 'circuit-breaker', '15 amp circuit', '20 amp circuit'],
  regionDependence: 'North American practice; other regions have no such rule',
  caution: 'mains',
  checks: ['continuous load allowed on a breaker (80 % rule, US)'],
  work({ breaker_rating: rating }) {
    const current = (rating * 4) / 5;
    return {
      result: { continuous_current: current },
      steps: [
        'A load that runs for hours may use 80 % of the breaker’s rating.',
        `I = 0.8 × I_breaker = 0.8 × ${put(rating, 'A')} = ${out(current, 'A')}`,
      ],
    };
  },
});
