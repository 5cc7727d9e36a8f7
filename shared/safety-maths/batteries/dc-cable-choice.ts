import { calculation } from '../calculation.js';
import { list, optional, quantity } from '../inputs.js';
import { rowOf } from '../plug-fuses/flex-table.js';
import { out, put } from '../working.js';
import { conductors } from './conductor-table.js';

/**
 * The smallest flexible conductor that keeps the voltage lost in a two-wire lead within a limit: r_max = V_limit × 1000 / (2 × L × I), then
 * the first size not above it. Length one way in m, current in A, limit in V, sizes in mm² (0.5 to 120, as in the table, all of them if left
 * out); size in mm², resistances in Ω/km, drop in V; null when none will do. Source: Ohm's law; IEC 60228, class 5.
 */
export const dcCableChoice = calculation({
  id: 'dc-cable-choice',
  title: 'Cable for a d.c. lead',
  topic: 'batteries',
  formula: 'r_max = V_limit × 1000 / (2 × L × I)',
  inputs: {
    length_one_way: quantity('length of the lead, one way', 'm', { min: 0.05, max: 300 }),
    current: quantity('current', 'A', { min: 0.01, max: 1000 }),
    drop_limit: quantity('voltage that may be lost, out and back', 'V', { min: 0.01, max: 100 }),
    sizes: optional(list('sizes to choose from', 'mm²', { min: 0.5, max: 120 })),
  },
  outputs: { conductor_area: 'mm²', resistance: 'ohm/km', largest_resistance: 'ohm/km', drop: 'V' },
  sources: ['dcDrop', 'conductorTable'],
  validity:
    'Flexible copper at 20 °C; the cable must also stand the current, and a fuse at the battery must protect it, whatever comes out.',
  rule: 'Smallest size by voltage drop alone',
  foundBy: ['which cable', 'power lead thickness', 'cable for a mobile radio', 'battery cable size', 'wire for 12 volts'],
  regionDependence: 'metric sizes; North American gauges differ',
  caution: 'battery',
  checks: ['smallest class 5 conductor for a drop limit'],
  work({ length_one_way: length, current, drop_limit: limit, sizes }) {
    const most = (limit * 1000) / (2 * length * current);
    const rows = sizes === undefined ? conductors : sizes.map((size) => rowOf(conductors, size, 'sizes')).sort((a, b) => a.area - b.area);
    const row = rows.find(({ class5 }) => class5 <= most);
    const drop = row === undefined ? null : (2 * length * row.class5 * current) / 1000;
    return {
      result: { conductor_area: row?.area ?? null, resistance: row?.class5 ?? null, largest_resistance: most, drop },
      steps: [
        `Most that each wire may have: r_max = V_limit × 1000 / (2 × L × I) = ${put(limit, 'V')} × 1000 / (2 × ${put(length, 'm')} × ${put(current, 'A')}) = ${out(most, 'ohm/km')}`,
        row === undefined || drop === null
          ? 'No size will do: make the lead shorter.'
          : `The first size not above it: ${put(row.area, 'mm²')} with ${put(row.class5, 'ohm/km')}. It loses V_drop = 2 × L × r × I / 1000 = ${out(drop, 'V')}`,
        'Then check that the cable stands the current of its fuse, and fit that fuse close to the battery.',
      ],
    };
  },
});
