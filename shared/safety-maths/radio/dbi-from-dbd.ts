import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';
import { dipoleGain } from './eirp.js';

/**
 * Antenna gain over isotropic from gain over a half-wave dipole: G_dBi = G_dBd + 2.15. Gain in dBd; gain in dBi. Source: antenna texts
 * and ITU-R usage.
 */
export const dbiFromDbd = calculation({
  id: 'dbi-from-dbd',
  title: 'Antenna gain, dBd into dBi',
  topic: 'radio',
  formula: 'G_dBi = G_dBd + 2.15',
  inputs: { gain: quantity('gain over a half-wave dipole', 'dBd', { min: -60, max: 80 }) },
  outputs: { gain: 'dBi' },
  sources: ['dipole'],
  validity: 'Gains of a whole antenna in its best direction; a data sheet that says only dB may mean either, so ask its maker.',
  rule: '2.15 dB; a few published sheets use 2.17 dB',
  foundBy: ['dbd to dbi', 'gain over a dipole', 'isotropic', '2.15 dB'],
  caution: 'rf',
  checks: ['gain over isotropic from gain over a dipole'],
  work({ gain }) {
    const overIsotropic = gain + dipoleGain;
    return {
      result: { gain: overIsotropic },
      steps: [
        `A half-wave dipole has itself ${put(dipoleGain, 'dB')} over an antenna that radiates alike in all directions.`,
        `G_dBi = G_dBd + 2.15 = ${put(gain, '')} + ${put(dipoleGain, '')} = ${out(overIsotropic, 'dBi')}`,
        'For an exposure sheet use dBi: taking dBd for dBi makes the field look too weak.',
      ],
    };
  },
});
