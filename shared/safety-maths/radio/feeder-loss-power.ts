import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** The power left after a feeder: P₂ = P₁ / 10^(a / 10). Power in W, loss in dB; power in W. Source: IEC 60027-3. */
export const feederLossPower = calculation({
  id: 'feeder-loss-power',
  title: 'Power left after the feeder',
  topic: 'radio',
  formula: 'P₂ = P₁ / 10^(a / 10)',
  inputs: {
    power: quantity('power into the feeder', 'W', { min: 0, max: 1e6 }),
    loss: quantity('loss of the feeder', 'dB', { min: 0, max: 200 }),
  },
  outputs: { power: 'W' },
  sources: ['decibel'],
  validity: 'A loss known for the whole feeder, at one frequency and with a matched antenna; a high standing-wave ratio loses more.',
  foundBy: ['coax loss', 'feeder loss', '3 dB loss', 'power at the antenna'],
  caution: 'rf',
  checks: ['power after feeder loss'],
  work({ power, loss }) {
    const left = power / 10 ** (loss / 10);
    return {
      result: { power: left },
      steps: [
        'A loss of a decibels divides the power by 10^(a / 10); 3 dB is about half.',
        `P₂ = ${put(power, 'W')} / 10^(${put(loss, '')} / 10) = ${put(power, 'W')} / ${out(10 ** (loss / 10), '')}`,
        `P₂ = ${out(left, 'W')}`,
      ],
    };
  },
});
