import { calculation } from '../calculation.js';
import { CalculationInputError, list, optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** Usual limits of one cell at 25 °C, V: float low and high, cyclic low and high. Source: a maker's data sheet. */
const usual = [2.25, 2.3, 2.35, 2.4];

/**
 * Between which voltages a sealed lead-acid battery is charged at 25 °C: V = n × V_cell, for staying on charge (float) and for a charge after
 * use (cycle). Cells whole, 1 to 24; the four voltages of a battery's own sheet may be given in V, float low, float high, cycle low, cycle
 * high. Results in V, for the battery and for one cell. Source: data sheet of a valve-regulated lead-acid battery.
 */
export const leadAcidChargeVoltages = calculation({
  id: 'lead-acid-charge-voltages',
  title: 'Charge voltages of a lead-acid battery',
  topic: 'batteries',
  formula: 'V = n × V_cell',
  inputs: {
    cells: quantity('cells in series (6 for 12 V)', '', { min: 1, max: 24 }),
    battery_voltages: optional(list('float low, float high, cycle low and cycle high on the battery’s sheet', 'V', { min: 1, max: 100 })),
  },
  outputs: {
    float_min: 'V',
    float_max: 'V',
    cycle_min: 'V',
    cycle_max: 'V',
    cell_float_min: 'V',
    cell_float_max: 'V',
    cell_cycle_min: 'V',
    cell_cycle_max: 'V',
  },
  sources: ['leadAcidSheet'],
  validity: 'Sealed lead-acid batteries at 25 °C; warmth asks for less and cold for more, and the battery’s own sheet comes first.',
  foundBy: ['charging a 12 volt battery', 'float voltage', '13.8 volts', 'car battery charger', 'overcharging'],
  caution: 'battery',
  checks: [
    'lead-acid charge limits, 12 V battery, 25 C',
    {
      name: 'lead-acid charge limits per cell, 25 C',
      keys: {
        battery_V: 'battery_voltages',
        float_min_V: 'cell_float_min',
        float_max_V: 'cell_float_max',
        cycle_min_V: 'cell_cycle_min',
        cycle_max_V: 'cell_cycle_max',
      },
    },
  ],
  work({ cells, battery_voltages: given }) {
    if (!Number.isInteger(cells)) throw new CalculationInputError('cells', 'is not a whole number of cells');
    if (given !== undefined && given.length !== 4)
      throw new CalculationInputError('battery_voltages', 'give four: float low, float high, cycle low, cycle high');
    const one = given === undefined ? usual : given.map((voltage) => voltage / cells);
    const all = given ?? usual.map((voltage) => voltage * cells);
    const [floatMin = 0, floatMax = 0, cycleMin = 0, cycleMax = 0] = all;
    const [cellFloatMin = 0, cellFloatMax = 0, cellCycleMin = 0, cellCycleMax = 0] = one;
    return {
      result: {
        float_min: floatMin,
        float_max: floatMax,
        cycle_min: cycleMin,
        cycle_max: cycleMax,
        cell_float_min: cellFloatMin,
        cell_float_max: cellFloatMax,
        cell_cycle_min: cellCycleMin,
        cell_cycle_max: cellCycleMax,
      },
      steps: stepsOf(cells, all, one, given === undefined),
    };
  },
});

function stepsOf(cells: number, all: readonly number[], one: readonly number[], fromTable: boolean): string[] {
  const lines = ['Staying on charge (float), at least', 'Float, at most', 'Charging after use (cycle), at least', 'Cycle, at most'].map(
    (what, index) => {
      const [battery, cell] = [all[index] ?? 0, one[index] ?? 0];
      return fromTable
        ? `${what}: V = n × V_cell = ${put(cells, '')} × ${put(cell, 'V')} = ${out(battery, 'V')}`
        : `${what}: V_cell = V / n = ${put(battery, 'V')} / ${put(cells, '')} = ${out(cell, 'V')}`;
    },
  );
  return [
    ...lines,
    'On charge a lead-acid battery can give off hydrogen, more so above the upper figures, and it can explode: fresh air, and no sparks.',
  ];
}
