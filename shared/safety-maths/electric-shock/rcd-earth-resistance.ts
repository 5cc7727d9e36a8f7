import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The greatest resistance to earth with which an RCD still keeps cases below a touch voltage, on a supply with its own electrode (TT):
 * R = U / I_Δn. Rated residual current in mA; touch voltage in V, at most 50 (50 if left out); resistance in Ω, of electrode and earth wire
 * together. Source: BS 7671, table 41.5 and regulation 411.5.3.
 */
export const rcdEarthResistance = calculation({
  id: 'rcd-earth-resistance',
  title: 'Greatest earth resistance with an RCD',
  topic: 'electric-shock',
  formula: 'R ≤ U / I_Δn',
  inputs: {
    rated_residual_current: quantity('rated residual current of the RCD', 'mA', { min: 1, max: 20000 }),
    touch_voltage: optional(quantity('touch voltage not to be passed', 'V', { min: 1, max: 50 })),
  },
  outputs: { resistance: 'ohm' },
  sources: ['rcdElectrode'],
  validity: 'TT supplies guarded by an RCD; a limit of arithmetic, as an electrode above about 200 Ω may not stay stable through the year.',
  foundBy: ['earth electrode', 'TT earth', 'earth rod ohms', '1667 ohms', 'touch voltage'],
  regionDependence: 'British and IEC rules; North American codes earth a supply in another way',
  caution: 'earth',
  checks: ['greatest earth-electrode resistance with an RCD (TT)'],
  work({ rated_residual_current: rating, touch_voltage: voltage = 50 }) {
    const resistance = voltage / (rating / 1000);
    return {
      result: { resistance },
      steps: [
        `The RCD trips at ${put(rating, 'mA')} at the latest, which is ${put(rating / 1000, 'A')}.`,
        `R = U / I_Δn = ${put(voltage, 'V')} / ${put(rating / 1000, 'A')} = ${out(resistance, 'ohm')}`,
        resistance > 200
          ? 'A real electrode should be well below that: above about 200 Ω it may not be stable as the soil dries or freezes.'
          : 'A real electrode should be well below that, as soil dries and freezes.',
        'Such an electrode seldom lets enough current through to blow a fuse: the RCD is what cuts off the supply here.',
      ],
    };
  },
});
