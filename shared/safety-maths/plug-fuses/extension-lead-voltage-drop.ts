import { calculation } from '../calculation.js';
import { fromRegion, quantity } from '../inputs.js';
import { out, put } from '../working.js';
import { flexDrops } from './flex-drop-table.js';
import { rowOf } from './flex-table.js';

/**
 * The voltage lost in a mains extension lead: V_drop = mV × L × I / 1000, where mV is the table's figure for each ampere and metre. Area in
 * mm² (0.5 to 4, as in the table), length of the lead in m, current in A, supply in V (the region's if left out); drop in V and in % of
 * the supply. Source: BS 7671, table 4F3B, whose figures count both conductors.
 */
export const extensionLeadVoltageDrop = calculation({
  id: 'extension-lead-voltage-drop',
  title: 'Voltage lost in an extension lead',
  topic: 'plug-fuses',
  formula: 'V_drop = mV × L × I / 1000',
  inputs: {
    conductor_area: quantity('area of a conductor', 'mm²', { min: 0.5, max: 4 }),
    length: quantity('length of the lead', 'm', { min: 0, max: 200 }),
    current: quantity('current', 'A', { min: 0, max: 63 }),
    supply: fromRegion(quantity('supply voltage', 'V', { min: 24, max: 1000 }), 'supplyVoltage'),
  },
  outputs: { drop: 'V', drop_percent: '%' },
  sources: ['flexDrop'],
  validity: 'A lead of metric flex, warm and fully unwound, on a single-phase supply; the loss in the house wiring comes on top.',
  rule: 'Table of BS 7671 for conductors at 60 °C; a sum with the resistance at 20 °C gives a little less',
  foundBy: ['long extension lead', 'voltage drop', 'how long can a lead be', 'garden shed', 'lights go dim'],
  regionDependence: 'UK table; the mains voltage, when no voltage is given',
  caution: 'plug',
  checks: ['voltage drop of an extension lead from the mV table'],
  work({ conductor_area: area, length, current, supply }) {
    const { drop: figure } = rowOf(flexDrops, area, 'conductor_area');
    const drop = (figure * length * current) / 1000;
    const percent = (drop / supply) * 100;
    return {
      result: { drop, drop_percent: percent },
      steps: [
        `The table gives ${put(figure, 'mV/A/m')} for ${put(area, 'mm²')}; it counts both conductors, so L is the length of the lead.`,
        `V_drop = mV × L × I / 1000 = ${put(figure, '')} × ${put(length, 'm')} × ${put(current, 'A')} / 1000 = ${out(drop, 'V')}`,
        `Of ${put(supply, 'V')} that is V_drop / V = ${out(percent, '%')}.`,
        'A long thin lead also lets less current flow in a fault, so the fuse is slower to blow: shorter and thicker is safer.',
      ],
    };
  },
});
