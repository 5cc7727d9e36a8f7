import { calculation } from '../calculation.js';
import { choice } from '../inputs.js';
import { put } from '../working.js';
import { cellKinds } from './cell-table.js';
import type { CellKind } from './cell-table.js';

/**
 * The nominal voltage of one cell of a kind, the highest it may be charged to and the lowest it may be emptied to. In V; null where no fixed
 * voltage holds. Source: a lithium-ion cell's specification; a lead-acid battery's data sheet; the rest from memory.
 */
export const cellVoltages = calculation({
  id: 'cell-voltages',
  title: 'Voltages of one cell',
  topic: 'batteries',
  formula: 'table by the kind of cell',
  inputs: { chemistry: choice('kind of cell', Object.keys(cellKinds) as (keyof typeof cellKinds)[]) },
  outputs: { nominal: 'V', charge_max: 'V', discharge_min: 'V' },
  sources: ['lithiumCell', 'leadAcidSheet', 'otherCells'],
  validity: 'Usual cells at room temperature; makers differ, above all in the lower limit, so the cell’s own sheet decides.',
  foundBy: ['cell voltage', 'lithium cell', 'fully charged voltage', 'flat battery voltage', 'NiMH', 'LiFePO4'],
  caution: 'lithium',
  checks: ['lithium-ion cell limits', { name: 'nominal cell voltage', keys: { voltage_V: 'nominal' } }],
  work({ chemistry }) {
    const kind: CellKind = cellKinds[chemistry];
    return {
      result: { nominal: kind.nominal, charge_max: kind.chargeMax, discharge_min: kind.dischargeMin },
      steps: [
        `One cell, ${chemistry}: ${put(kind.nominal, 'V')} nominal. Multiply by the number of cells in series for a battery.`,
        chargeLine(kind),
        kind.dischargeMin === null
          ? 'No lowest voltage is set.'
          : `Emptied to ${put(kind.dischargeMin, 'V')} at the lowest; lower spoils it.`,
      ],
    };
  },
});

function chargeLine({ chargeMax, dischargeMin }: CellKind): string {
  if (chargeMax !== null) return `Charged to ${put(chargeMax, 'V')} at most: above that it can overheat or give off gas.`;
  // Only a cell that cannot be recharged has neither limit.
  return dischargeMin === null
    ? 'Never charge it: it can leak or burst.'
    : 'No fixed voltage ends its charge: use only a charger made for it.';
}
