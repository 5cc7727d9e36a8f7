import { calculation } from '../calculation.js';
import { choice, optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';
import { bodyImpedances } from './body-impedance-table.js';

/**
 * The impedance of a body from hand to hand, dry, by touch voltage in V (1 to 10 000): what 5 %, 50 % and 95 % of people do not exceed, in
 * Ω. Between two rows the higher voltage is taken, whose lower impedance lets more current through. Table of 1994 unless told. Source: IEC
 * 479-1:1994, table 1; IEC/TS 60479-1:2005, table 1.
 */
export const bodyImpedance = calculation({
  id: 'body-impedance',
  title: 'Impedance of a body',
  topic: 'electric-shock',
  formula: 'table 1 of IEC 60479-1',
  inputs: {
    touch_voltage: quantity('touch voltage', 'V', { min: 1, max: 10000 }),
    table: optional(choice('year of the table', ['1994', '2005'])),
  },
  outputs: { impedance_5_percent: 'ohm', impedance_50_percent: 'ohm', impedance_95_percent: 'ohm' },
  sources: ['body', 'body700', 'body2005'],
  validity: 'Dry skin, hand to hand, a large area of touch and mains frequency; wet or broken skin can let far more current through.',
  rule: 'The table of 1994, unless that of 2005 is chosen; the later one gives lower middle values at most voltages',
  foundBy: ['resistance of a person', 'resistance of skin', 'ohms of a human', 'hand to hand', 'dry hands'],
  caution: 'rescue',
  checks: [
    { name: 'body impedance, hand to hand, dry (1994 table)', inputs: { table: '1994' } },
    { name: 'body impedance, hand to hand, dry (2005 table)', inputs: { table: '2005' } },
    { name: 'body impedance, asymptotic value (1994 table)', inputs: { table: '1994', touch_voltage: 10000 } },
  ],
  work({ touch_voltage: voltage, table = '1994' }) {
    // The last row is for any voltage, so that there always is one.
    const { upTo, ohms } = bodyImpedances[table].find((row) => voltage <= row.upTo) ?? { upTo: Infinity, ohms: [0, 0, 0] as const };
    const [low, middle, high] = ohms;
    return {
      result: { impedance_5_percent: low, impedance_50_percent: middle, impedance_95_percent: high },
      steps: [
        upTo === Infinity
          ? `${put(voltage, 'V')} is above the table’s rows: the values that high voltages tend to are taken.`
          : upTo === voltage
            ? `The table of ${table} has a row for ${put(voltage, 'V')}.`
            : `The table of ${table} has no row for ${put(voltage, 'V')}: the next, ${put(upTo, 'V')}, is taken, as it errs on the cautious side.`,
        `5 % of people have ${put(low, 'ohm')} or less, half have ${put(middle, 'ohm')} or less, 95 % have ${put(high, 'ohm')} or less.`,
        `Half of people would then carry at least: I = V / Z = ${put(voltage, 'V')} / ${put(middle, 'ohm')} = ${out((voltage / middle) * 1000, 'mA')}`,
        'Nobody can tell their own impedance beforehand, and sweat or water lowers it: never rely on it.',
      ],
    };
  },
});
