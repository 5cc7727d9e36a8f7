import { calculation } from '../calculation.js';
import { choice, fromRegion, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** Greatest loss between the supply and the load, % of the supply. Source: BS 7671, appendix 4. */
const limits = { lighting: 3, other: 5 } as const;

/**
 * How much voltage may be lost between a public supply and a load: V_limit = V × 3 % for lighting, 5 % for other uses. Supply in V (the
 * region's if left out); limit in V and %. Source: BS 7671, appendix 4, section 6.4.
 */
export const voltageDropLimit = calculation({
  id: 'voltage-drop-limit',
  title: 'How much voltage may be lost on the way',
  topic: 'plug-fuses',
  formula: 'V_limit = V × limit',
  inputs: {
    supply: fromRegion(quantity('supply voltage', 'V', { min: 24, max: 1000 }), 'supplyVoltage'),
    use: choice('use', ['lighting', 'other']),
  },
  outputs: { limit: 'V', limit_percent: '%' },
  sources: ['dropLimit'],
  validity: 'Low-voltage wiring fed from the public supply, from where it enters the building to the load; equipment may need more.',
  rule: 'BS 7671: 3 % for lighting, 5 % for other uses',
  foundBy: ['voltage drop limit', '5 per cent', '3 per cent', 'allowed voltage drop'],
  regionDependence: 'UK rule; the mains voltage, when no voltage is given',
  caution: 'mains',
  checks: ['voltage-drop limit, low voltage, from a public supply'],
  work({ supply, use }) {
    const percent = limits[use];
    const limit = (supply * percent) / 100;
    return {
      result: { limit, limit_percent: percent },
      steps: [
        `The wiring rules allow ${put(3, '%')} for lighting and ${put(5, '%')} for other uses.`,
        `V_limit = V × limit = ${put(supply, 'V')} × ${put(percent, '%')} = ${out(limit, 'V')}`,
        'That is for the whole way from the supply, the fixed wiring included, which is for an electrician.',
      ],
    };
  },
});
