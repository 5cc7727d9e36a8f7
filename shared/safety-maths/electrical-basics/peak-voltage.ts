import { calculation } from '../calculation.js';
import { fromRegion, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** The peak of a sine wave: V_peak = √2 × V_rms. Voltage in V r.m.s. (the region's mains if left out); peak in V. Source: any physics text. */
export const peakVoltage = calculation({
  id: 'peak-voltage',
  title: 'Peak voltage of a sine wave',
  topic: 'electrical-basics',
  formula: 'V_peak = √2 × V_rms',
  inputs: { voltage_rms: fromRegion(quantity('r.m.s. voltage', 'V', { min: 0, max: 1e6 }), 'supplyVoltage') },
  outputs: { voltage_peak: 'V' },
  sources: ['sine'],
  validity: 'A pure sine wave; switched or distorted waveforms, and surges on the mains, can peak far higher.',
  foundBy: ['r.m.s. to peak', 'mains peak', 'crest', 'insulation voltage'],
  regionDependence: 'the mains voltage, when no voltage is given',
  caution: 'hv',
  checks: ['peak voltage of a sine wave'],
  work({ voltage_rms: rms }) {
    const peak = Math.SQRT2 * rms;
    return {
      result: { voltage_peak: peak },
      steps: ['The peak is √2, about 1.414, times the r.m.s. value.', `V_peak = 1.414 × ${put(rms, 'V')}`, `V_peak = ${out(peak, 'V')}`],
    };
  },
});
