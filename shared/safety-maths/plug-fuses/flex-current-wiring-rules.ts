import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { put } from '../working.js';
import { rowOf } from './flex-table.js';

/** Area in mm² and current in A. Source: BS 7671, table 4F3A, two rows. */
const rows = [
  { area: 1.5, current: 16 },
  { area: 2.5, current: 25 },
];

/** The greatest current of a thicker flex by the wiring rules. Area in mm² (1.5 or 2.5); current in A. Source: BS 7671, table 4F3A. */
export const flexCurrentWiringRules = calculation({
  id: 'flex-current-wiring-rules',
  title: 'Greatest current of a thicker flex, by the wiring rules',
  topic: 'plug-fuses',
  formula: 'table 4F3A of BS 7671',
  inputs: { conductor_area: quantity('area of a conductor', 'mm²', { min: 1.5, max: 2.5 }) },
  outputs: { current: 'A' },
  sources: ['flexCurrentWiring'],
  validity: 'Single-phase flexible cable stretched out in air; in some three-phase groupings 2.5 mm² carries 20 A only.',
  rule: 'Table of BS 7671; appliance testers go by 15 A for 1.5 mm²',
  regionDependence: 'UK practice',
  caution: 'mains',
  checks: ['greatest current of a flexible cord (BS 7671 figure)'],
  work({ conductor_area: area }) {
    const { current } = rowOf(rows, area, 'conductor_area');
    return {
      result: { current },
      steps: ['The table of the wiring rules gives the current by the area.', `${put(area, 'mm²')} carries at most ${put(current, 'A')}.`],
    };
  },
});
