import { conductors } from '../batteries/conductor-table.js';
import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';
import { rowOf } from './flex-table.js';

/**
 * The resistance of one conductor of a lead: R = r × L. Area in mm² (a size of the table, unless r is given), length in m, r in mΩ/m (the
 * greatest of flexible copper at 20 °C if left out); resistance in Ω. Source: IEC 60228, class 5; a lead maker's table.
 */
export const leadResistance = calculation({
  id: 'lead-resistance',
  title: 'Resistance of one conductor of a lead',
  topic: 'plug-fuses',
  formula: 'R = r × L',
  inputs: {
    conductor_area: quantity('area of the conductor', 'mm²', { min: 0.5, max: 16 }),
    length: quantity('length of the lead', 'm', { min: 0, max: 1000 }),
    resistance_per_metre: optional(quantity('resistance of one metre of the conductor', 'mohm/m', { min: 0.1, max: 1000 })),
  },
  outputs: { resistance: 'ohm' },
  sources: ['leadResistance', 'conductorTable'],
  validity: 'Flexible plain copper at 20 °C, one conductor one way, plug and socket contacts left out; a warm lead measures more.',
  foundBy: ['earth continuity', 'resistance of an extension lead', 'ohms of a cable', 'testing a lead'],
  caution: 'plug',
  checks: [{ name: 'resistance of one conductor of a lead', keys: { resistance_mohm_per_m: 'resistance_per_metre' } }],
  work({ conductor_area: area, length, resistance_per_metre: given }) {
    const each = given ?? rowOf(conductors, area, 'conductor_area').class5;
    const resistance = (each * length) / 1000;
    return {
      result: { resistance },
      steps: [
        given === undefined
          ? `Flexible copper of ${put(area, 'mm²')} has at most ${put(each, 'mohm/m')}, from the table.`
          : `One metre of the conductor has ${put(each, 'mohm/m')}.`,
        `R = r × L = ${put(each, 'mohm/m')} × ${put(length, 'm')} = ${out(resistance, 'ohm')}`,
        'A tester that reads much more has found a bad joint or a damaged conductor: take the lead out of use.',
      ],
    };
  },
});
