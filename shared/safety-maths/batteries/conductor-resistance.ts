import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { rowOf } from '../plug-fuses/flex-table.js';
import { put } from '../working.js';
import { conductors } from './conductor-table.js';

/**
 * The greatest resistance a copper conductor may have, by its area. Area in mm² (a size of the table, 0.5 to 120); resistance at 20 °C in
 * Ω/km, stranded (class 2) and flexible (class 5). Source: IEC 60228.
 */
export const conductorResistance = calculation({
  id: 'conductor-resistance',
  title: 'Resistance of a copper wire by its size',
  topic: 'batteries',
  formula: 'table of IEC 60228',
  inputs: { conductor_area: quantity('area of the conductor', 'mm²', { min: 0.5, max: 120 }) },
  outputs: { class_5: 'ohm/km', class_2: 'ohm/km' },
  sources: ['conductorTable'],
  validity: 'Plain copper at 20 °C, one wire one way; a warm wire has more, tinned or copper-clad wire as well.',
  foundBy: ['ohms per kilometre', 'wire resistance', 'cable size', 'square millimetres', 'speaker cable'],
  caution: 'battery',
  checks: ['greatest conductor resistance at 20 C, plain copper'],
  work({ conductor_area: area }) {
    const { class2, class5 } = rowOf(conductors, area, 'conductor_area');
    return {
      result: { class_5: class5, class_2: class2 },
      steps: [
        `Table for ${put(area, 'mm²')}: flexible wire (class 5) at most ${put(class5, 'ohm/km')}, stranded wire (class 2) at most ${put(class2, 'ohm/km')}.`,
        'A lead has two wires, out and back: count the length twice.',
      ],
    };
  },
});
