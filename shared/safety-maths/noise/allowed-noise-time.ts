import { calculation } from '../calculation.js';
import { choice, optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

const rules = {
  '85 dB(A) for 8 h, halved each 3 dB': (level: number) => 8 / 2 ** ((level - 85) / 3),
  '87 dB(A) for 8 h, equal energy': (level: number) => 8 * 10 ** ((87 - level) / 10),
  '90 dB(A) for 8 h, halved each 5 dB': (level: number) => 8 / 2 ** ((level - 90) / 5),
} as const;
type Rule = keyof typeof rules;

/**
 * The time at a sound level that makes a full daily dose, by a named workplace rule: t = 8 h / 2^((L − L_ref) / step).
 * Level in dB(A), 70 to 140; time in h. Without a rule: 85 dB(A) for 8 h, halved each 3 dB. Workplace rules, not advice for leisure:
 * for young people and weekly listening stay much lower. Source: NIOSH 98-126; National Joint Council of Canada; 29 CFR 1910.95.
 */
export const allowedNoiseTime = calculation({
  id: 'allowed-noise-time',
  title: 'Time allowed at a sound level',
  topic: 'noise',
  formula: 't = 8 h / 2^((L − L_ref) / step)',
  inputs: {
    level: quantity('sound level', 'dB(A)', { min: 70, max: 140 }),
    rule: optional(choice('rule', Object.keys(rules) as Rule[])),
  },
  outputs: { time: 'h' },
  sources: ['niosh', 'equalEnergy', 'osha'],
  regionDependence: 'workplace law differs; the rule is named, and chosen by whoever asks',
  caution: 'noise',
  checks: [
    { name: 'time to full daily dose (85 dB, 3 dB exchange)', inputs: { rule: '85 dB(A) for 8 h, halved each 3 dB' } },
    { name: 'time to full daily dose (87 dB, equal energy)', inputs: { rule: '87 dB(A) for 8 h, equal energy' } },
    { name: 'time to full daily dose (OSHA: 90 dB, 5 dB exchange)', inputs: { rule: '90 dB(A) for 8 h, halved each 5 dB' } },
  ],
  work({ level, rule = '85 dB(A) for 8 h, halved each 3 dB' }) {
    const time = rules[rule](level);
    return {
      result: { time },
      steps: [
        `Rule: ${rule}.`,
        `At ${put(level, 'dB(A)')}: t = ${out(time, 'h')} = ${out(time * 60, 'min')}`,
        'That is a workplace dose for a grown-up’s whole day: set the level as low as you can follow.',
      ],
    };
  },
});
