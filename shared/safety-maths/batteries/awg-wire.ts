import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';
import { gaugeOf } from './awg-table.js';

/**
 * Diameter, area and resistance of a wire by its American gauge: d = 0.127 mm × 92^((36 − n) / 39), A = π d² / 4, R = 17.241 / A.
 * Gauge −3 (4/0) to 40; diameter in mm, area in mm², resistance in Ω/km at 20 °C. Source: ASTM B258.
 */
export const awgWire = calculation({
  id: 'awg-wire',
  title: 'American wire gauge in millimetres',
  topic: 'batteries',
  formula: 'd = 0.127 mm × 92^((36 − n) / 39)',
  inputs: { awg: quantity('AWG number (0 for 1/0, −1 for 2/0)', '', { min: -3, max: 40 }) },
  outputs: { diameter: 'mm', conductor_area: 'mm²', resistance: 'ohm/km' },
  sources: ['awg', 'resistivity'],
  validity: 'Solid round copper wire at 20 °C; stranded wire of the same gauge is thicker over all and has a few per cent more resistance.',
  foundBy: ['AWG to mm', 'wire gauge', 'American wire size', '12 gauge', '10 AWG'],
  regionDependence: 'North American wire sizes',
  caution: 'battery',
  checks: ['diameter of an AWG size', 'resistance of an AWG size at 20 C'],
  work({ awg }) {
    const { diameter, area, resistance } = gaugeOf(awg);
    return {
      result: { diameter, conductor_area: area, resistance },
      steps: [
        `Diameter: d = 0.127 mm × 92^((36 − n) / 39) = 0.127 mm × 92^((36 − ${put(awg, '')}) / 39) = ${out(diameter, 'mm')}`,
        `Area: A = π × d² / 4 = π × (${out(diameter, 'mm')})² / 4 = ${out(area, 'mm²')}`,
        `Resistance: R = 17.241 / A = 17.241 / ${out(area, '')} = ${out(resistance, 'ohm/km')}. A bigger number is a thinner wire.`,
      ],
    };
  },
});
