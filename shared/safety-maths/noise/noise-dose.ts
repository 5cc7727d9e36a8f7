import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/**
 * The dose of one spell of noise, against 85 dB(A) for 8 h, doubled each 3 dB: D = 100 % × (t / 8 h) × 2^((L − 85) / 3); and what it
 * comes to over eight hours by equal energy: L_EP,d = L + 10 log10(t / 8 h). Level in dB(A), time in min; dose in %, exposure in dB(A).
 * Source: NIOSH 98-126; HSE L108.
 */
export const noiseDose = calculation({
  id: 'noise-dose',
  title: 'Noise dose of headphones or a machine',
  topic: 'noise',
  formula: 'D = 100 × (t / 480 min) × 2^((L − 85) / 3)',
  inputs: {
    level: quantity('sound level at the ear', 'dB(A)', { min: 60, max: 140 }),
    time: quantity('time at that level', 'min', { min: 1, max: 1440 }),
  },
  outputs: { dose: '%', daily_exposure: 'dB(A)' },
  sources: ['niosh', 'dailyNoise'],
  validity: 'One steady level with quiet for the rest of the day; sudden bangs can harm at once, whatever the dose.',
  rule: '85 dB(A) for 8 h, doubled each 3 dB (some North American workplaces use 5 dB, which allows more)',
  foundBy: ['headphones', 'too loud', 'hearing damage', 'per cent of a day’s noise', 'generator noise'],
  caution: 'noise',
  checks: ['daily personal noise exposure'],
  work({ level, time }) {
    const share = (100 * time) / 480;
    const dose = share * 2 ** ((level - 85) / 3);
    const daily = level + 10 * Math.log10(time / 480);
    return {
      result: { dose, daily_exposure: daily },
      steps: [
        `Share of 8 hours: 100 × t / ${put(480, 'min')} = 100 × ${put(time, 'min')} / ${put(480, 'min')} = ${out(share, '%')}`,
        `It doubles each 3 dB above 85: D = ${out(share, '%')} × 2^((${put(level, '')} − 85) / 3) = ${out(dose, '%')}`,
        'Spread over 8 hours by equal energy: L_EP = L + 10 × log10(t / 480 min).',
        `L_EP = ${put(level, '')} + 10 × log10(${put(time, '')} / 480) = ${out(daily, 'dB(A)')}`,
        dose > 100
          ? 'That is more than a full workplace day: turn it down, or stop sooner.'
          : 'A full dose, 100 %, is a limit for work, not an aim: keep well under it, most of all for young ears.',
      ],
    };
  },
});
