import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';
import { dipoleGain } from './eirp.js';

/** ERP from EIRP: ERP = EIRP / 10^(2.15 / 10), a division by 1.64. Both in W. Source: antenna texts; the pair 10 W and 6.1 W from Ofcom. */
export const erpFromEirp = calculation({
  id: 'erp-from-eirp',
  title: 'EIRP into ERP',
  topic: 'radio',
  formula: 'ERP = EIRP / 10^(2.15 / 10)',
  inputs: { eirp: quantity('EIRP', 'W', { min: 0, max: 1e12 }) },
  outputs: { erp: 'W' },
  sources: ['dipole', 'erpThreshold'],
  validity: 'Powers of the same antenna in the same direction; the difference is only what each is compared with.',
  rule: '2.15 dB between a dipole and an isotropic antenna',
  foundBy: ['erp and eirp', 'effective radiated power', '6.1 W', 'divide by 1.64'],
  caution: 'rf',
  checks: ['ERP from EIRP'],
  work({ eirp }) {
    const ratio = 10 ** (dipoleGain / 10);
    const erp = eirp / ratio;
    return {
      result: { erp },
      steps: [
        `EIRP counts from an isotropic antenna, ERP from a half-wave dipole, which has ${put(dipoleGain, 'dB')} more.`,
        `As a ratio: r = 10^(2.15 / 10) = ${out(ratio, '')}`,
        `ERP = EIRP / r = ${put(eirp, 'W')} / ${out(ratio, '')} = ${out(erp, 'W')}`,
        'See which of the two a rule means before you compare.',
      ],
    };
  },
});
