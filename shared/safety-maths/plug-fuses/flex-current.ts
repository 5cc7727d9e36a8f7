import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';
import { flexes, rowOf } from './flex-table.js';

/**
 * The greatest current of a flex by the area of its conductors. Area in mm² (0.5, 0.75, 1, 1.25 or 1.5); current in A.
 * Source: IET Code of Practice, table VII.1.
 */
export const flexCurrent = calculation({
  id: 'flex-current',
  title: 'Greatest current of a flex',
  topic: 'plug-fuses',
  formula: 'table VII.1 of the IET Code of Practice',
  inputs: { conductor_area: quantity('area of a conductor', 'mm²', { min: 0.5, max: 1.5 }) },
  outputs: { current: 'A' },
  sources: ['flexCurrent'],
  validity: 'Ordinary appliance flex, stretched out in air at room temperature; wound up, bundled or covered it carries less.',
  rule: 'Table of the IET Code of Practice; wiring rules allow 16 A for 1.5 mm²',
  foundBy: ['flex size', 'cable rating', 'how thick a cable', 'cord', '0.75 mm²'],
  regionDependence: 'UK practice; other regions have tables of their own',
  caution: 'plug',
  checks: ['greatest current of a flexible cord'],
  work({ conductor_area: area }) {
    const { current } = rowOf(flexes, area, 'conductor_area');
    return {
      result: { current },
      steps: [
        `Table: ${flexes.map((flex) => `${put(flex.area, 'mm²')} ${put(flex.current, 'A')}`).join(', ')}.`,
        `${put(area, 'mm²')} carries at most ${out(current, 'A')}. A flex with too much current cooks its insulation.`,
      ],
    };
  },
});
