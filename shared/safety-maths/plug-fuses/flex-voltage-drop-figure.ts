import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { put } from '../working.js';
import { flexDrops } from './flex-drop-table.js';
import { rowOf } from './flex-table.js';

/**
 * The voltage a warm flex loses for each ampere and each metre of its length, out and back counted. Area in mm² (0.5 to 4, as in the
 * table); loss in mV/A/m. Source: BS 7671, table 4F3B.
 */
export const flexVoltageDropFigure = calculation({
  id: 'flex-voltage-drop-figure',
  title: 'Voltage lost in a flex for each ampere and metre',
  topic: 'plug-fuses',
  formula: 'table 4F3B of BS 7671',
  inputs: { conductor_area: quantity('area of a conductor', 'mm²', { min: 0.5, max: 4 }) },
  outputs: { drop: 'mV/A/m' },
  sources: ['flexDrop'],
  validity: 'Flexible cable on a single-phase supply with its conductors at 60 °C; a cold cable loses about a seventh less.',
  regionDependence: 'UK table of metric sizes',
  caution: 'plug',
  checks: ['voltage drop per ampere and metre of a flexible cord, 60 C'],
  work({ conductor_area: area }) {
    const { drop } = rowOf(flexDrops, area, 'conductor_area');
    return {
      result: { drop },
      steps: [
        `Table: ${flexDrops.map((row) => `${put(row.area, 'mm²')} ${put(row.drop, '')}`).join(', ')}, all in mV for each ampere and metre.`,
        `${put(area, 'mm²')} loses ${put(drop, 'mV/A/m')}. Both conductors are counted already: use the plain length of the flex.`,
      ],
    };
  },
});
