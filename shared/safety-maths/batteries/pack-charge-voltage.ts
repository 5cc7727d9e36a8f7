import { calculation } from '../calculation.js';
import { CalculationInputError, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The voltage of a fully charged pack of cells in series: V = n × V_cell. Number of cells whole, 1 to 100; full voltage of one cell in V
 * (4.2 V for lithium-ion, 3.65 V for lithium iron phosphate); result in V. Source: cell makers' specifications.
 */
export const packChargeVoltage = calculation({
  id: 'pack-charge-voltage',
  title: 'Voltage of a fully charged pack',
  topic: 'batteries',
  formula: 'V = n × V_cell',
  inputs: {
    cells_in_series: quantity('cells in series', '', { min: 1, max: 100 }),
    cell_voltage: quantity('full voltage of one cell', 'V', { min: 0.5, max: 5 }),
  },
  outputs: { voltage: 'V' },
  sources: ['lithiumCells', 'otherCells'],
  validity:
    'Cells of one kind and age that are balanced; cells in parallel add no voltage, and the charger must be made for that very pack.',
  foundBy: ['lithium pack voltage', '3S', '4S battery', 'how many cells', 'which charger', 'charger voltage'],
  caution: 'lithium',
  checks: [
    { name: 'full charge voltage of a lithium-ion pack', keys: { cell_V: 'cell_voltage' } },
    { name: 'full charge voltage of a lithium iron phosphate pack', keys: { cell_V: 'cell_voltage' } },
  ],
  work({ cells_in_series: cells, cell_voltage: each }) {
    if (!Number.isInteger(cells)) throw new CalculationInputError('cells_in_series', 'is not a whole number of cells');
    const voltage = cells * each;
    return {
      result: { voltage },
      steps: [
        'In series the voltages add.',
        `V = n × V_cell = ${put(cells, '')} × ${put(each, 'V')} = ${out(voltage, 'V')}`,
        'Charged above that, a lithium pack can catch fire. A charger for another pack or another kind of cell is not safe.',
      ],
    };
  },
});
