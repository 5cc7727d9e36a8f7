import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { put } from '../working.js';
import { rowOf } from './flex-table.js';

/** Area of a conductor in mm², greatest length of a lead in m. Source: IET Code of Practice (the first row from memory). */
const rows = [
  { area: 1.25, length: 12 },
  { area: 1.5, length: 15 },
  { area: 2.5, length: 25 },
];

/**
 * The greatest length that is recommended for an extension lead. Area in mm² (1.25, 1.5 or 2.5); length in m.
 * Source: IET Code of Practice for in-service inspection and testing.
 */
export const extensionLeadLength = calculation({
  id: 'extension-lead-length',
  title: 'Longest extension lead for its thickness',
  topic: 'plug-fuses',
  formula: 'table of the IET Code of Practice',
  inputs: { conductor_area: quantity('area of a conductor', 'mm²', { min: 1.25, max: 2.5 }) },
  outputs: { length: 'm' },
  sources: ['leadLength', 'leadLengthThin'],
  validity: 'UK extension leads, fully unwound and never joined end to end; longer ones should be protected by a 30 mA RCD.',
  rule: 'IET Code of Practice for testing equipment',
  foundBy: ['how long can an extension lead be', 'maximum length', 'extension cable', 'joining extension leads', '25 metre lead'],
  regionDependence: 'UK practice',
  caution: 'plug',
  checks: ['recommended greatest length of an extension lead'],
  work({ conductor_area: area }) {
    const { length } = rowOf(rows, area, 'conductor_area');
    return {
      result: { length },
      steps: [
        `Table: ${rows.map((row) => `${put(row.area, 'mm²')} up to ${put(row.length, 'm')}`).join(', ')}.`,
        `${put(area, 'mm²')}: ${put(length, 'm')} at most. In a longer lead so little current flows in a fault that the fuse may be slow to blow.`,
      ],
    };
  },
});
