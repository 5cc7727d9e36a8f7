import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** A half-wave dipole over an isotropic antenna, dB. Source: antenna texts and ITU-R usage. */
export const dipoleGain = 2.15;

/**
 * Radiated power: EIRP = P × 10^((G − a) / 10), and ERP, 2.15 dB less. Power in W, gain in dBi (-60 to 80), feeder loss in dB (0 if left
 * out); results in W. Source: IEC 60027-3; dipole gain from antenna texts.
 */
export const eirp = calculation({
  id: 'eirp',
  title: 'Radiated power, EIRP and ERP',
  topic: 'radio',
  formula: 'EIRP = P × 10^((G − a) / 10)',
  inputs: {
    power: quantity('transmitter power', 'W', { min: 0, max: 1e6 }),
    gain: quantity('antenna gain', 'dBi', { min: -60, max: 80 }),
    feeder_loss: optional(quantity('loss of the feeder', 'dB', { min: 0, max: 200 })),
  },
  outputs: { eirp: 'W', erp: 'W' },
  sources: ['decibel', 'dipole'],
  validity: 'The direction in which the antenna radiates most, far enough away; it says nothing of the power close to the antenna.',
  rule: 'ERP counts from a half-wave dipole, 2.15 dB over isotropic',
  foundBy: ['erp', 'radiated power', 'effective radiated power', 'licence power limit', 'gain and feeder loss'],
  caution: 'rf',
  checks: ['EIRP', 'EIRP and ERP from power, feeder loss and gain'],
  work({ power, gain, feeder_loss: loss = 0 }) {
    const net = gain - loss;
    const radiated = power * 10 ** (net / 10);
    const overDipole = power * 10 ** ((net - dipoleGain) / 10);
    return {
      result: { eirp: radiated, erp: overDipole },
      steps: [
        `Gain less loss: ${put(gain, 'dBi')} − ${put(loss, 'dB')} = ${out(net, 'dB')}`,
        `EIRP = ${put(power, 'W')} × 10^(${out(net, '')} / 10) = ${out(radiated, 'W')}`,
        `ERP counts from a dipole, ${put(dipoleGain, 'dB')} less: ${out(overDipole, 'W')}`,
      ],
    };
  },
});
