import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The greatest antenna gain with which the power density just meets a limit: G = 10 log₁₀(4 π d² S / P). Power in W, distance in m,
 * limit in W/m²; gain in dBi. Source: OET Bulletin 65, section 2, turned round.
 */
export const antennaGainForLimit = calculation({
  id: 'antenna-gain-for-limit',
  title: 'Greatest antenna gain for a distance',
  topic: 'exposure',
  formula: 'G = 10 × log₁₀(4 π d² S / P)',
  inputs: {
    power: quantity('average power at the antenna', 'W', { min: 1e-6, max: 1e6 }),
    distance: quantity('distance people are kept away', 'm', { min: 0.01, max: 1e5 }),
    limit: quantity('limit of power density', 'W/m²', { min: 1e-6, max: 1e6 }),
  },
  outputs: { gain: 'dBi' },
  sources: ['oet65'],
  validity: 'Free space, straight in front of the antenna and well away from it; a reflection can nearly double the field.',
  foundBy: ['biggest antenna allowed', 'how much gain can I use', 'gain for a distance'],
  caution: 'rf',
  checks: ['greatest aerial gain at a distance'],
  work({ power, distance, limit }) {
    const eirp = 4 * Math.PI * distance * distance * limit;
    const gain = 10 * Math.log10(eirp / power);
    return {
      result: { gain },
      steps: [
        `The EIRP that just meets the limit: 4 π d² S = 4 π × (${put(distance, 'm')})² × ${put(limit, 'W/m²')} = ${out(eirp, 'W')}`,
        `G = 10 × log₁₀(${out(eirp, 'W')} / ${put(power, 'W')}) = ${out(gain, 'dBi')}`,
        'Any more gain and people at that distance are over the limit. Round down, never up.',
      ],
    };
  },
});
