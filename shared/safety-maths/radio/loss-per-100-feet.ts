import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** Metres in a foot, exact. Source: NIST SP 811, appendix B.8. */
export const foot = 0.3048;

/** Feeder loss per 100 ft as loss per 100 m: a_m = a_ft / 0.3048. Loss in dB/100 ft; loss in dB/100 m. Source: NIST SP 811. */
export const lossPer100Feet = calculation({
  id: 'loss-per-100-feet',
  title: 'Feeder loss per 100 feet into loss per 100 metres',
  topic: 'radio',
  formula: 'a_m = a_ft / 0.3048',
  inputs: { loss: quantity('loss of the feeder', 'dB/100 ft', { min: 0, max: 1000 }) },
  outputs: { loss: 'dB/100 m' },
  sources: ['foot'],
  validity: 'Any feeder; the loss itself belongs to one frequency and to cable that is dry and sound.',
  foundBy: ['dB per 100 ft', 'coax data sheet', 'cable loss in feet', 'attenuation'],
  caution: 'rf',
  checks: ['dB per 100 ft to dB per 100 m'],
  work({ loss }) {
    const perMetres = loss / foot;
    return {
      result: { loss: perMetres },
      steps: [
        `A foot is ${put(foot, 'm')}, so 100 m lose more than 100 ft do: a_m = a_ft / 0.3048.`,
        `a_m = ${put(loss, '')} / ${put(foot, '')} = ${out(perMetres, '')}`,
        `The loss is ${out(perMetres, 'dB/100 m')}.`,
      ],
    };
  },
});
