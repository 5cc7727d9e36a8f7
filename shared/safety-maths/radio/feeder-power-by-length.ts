import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The power at the antenna from the loss per 100 m: P₂ = P₁ / 10^(a × l / 10). Power in W, length in m, loss in dB/100 m; power in W and
 * loss of the whole feeder in dB. Source: IEC 60027-3.
 */
export const feederPowerByLength = calculation({
  id: 'feeder-power-by-length',
  title: 'Power at the antenna from cable loss and length',
  topic: 'radio',
  formula: 'P₂ = P₁ / 10^(a × l / 10)',
  inputs: {
    power: quantity('power into the feeder', 'W', { min: 0, max: 1e6 }),
    length: quantity('length of the feeder', 'm', { min: 0, max: 1000 }),
    loss: quantity('loss of the cable', 'dB/100 m', { min: 0, max: 200 }),
  },
  outputs: { power: 'W', loss: 'dB' },
  sources: ['decibel'],
  validity: 'A feeder that is matched at the antenna; with a high standing-wave ratio more is lost.',
  foundBy: ['dB per 100 m', 'metres of coax', 'how much power reaches the antenna', 'feeder length'],
  caution: 'rf',
  checks: ['power at the aerial from cable loss per 100 m'],
  work({ power, length, loss: per100 }) {
    const loss = (per100 * length) / 100;
    const left = power / 10 ** (loss / 10);
    return {
      result: { power: left, loss },
      steps: [
        `Loss is in proportion to length: L = ${put(per100, 'dB')} × ${put(length, 'm')} / ${put(100, 'm')} = ${out(loss, 'dB')}`,
        `P₂ = P₁ / 10^(L / 10) = ${put(power, 'W')} / 10^(${out(loss, '')} / 10) = ${out(left, 'W')}`,
        'The rest warms the cable. A cautious exposure sheet leaves the feeder loss out altogether.',
      ],
    };
  },
});
