import { calculation } from '../calculation.js';
import { choice, optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** Level in dB(A) for a time in h, and the dB that halve the time; equal energy halves it each 10 log10(2), about 3.01 dB. */
const rules = {
  '85 dB(A) for 8 h, halved each 3 dB': { level: 85, step: 3 },
  '87 dB(A) for 8 h, equal energy': { level: 87, step: 10 * Math.log10(2) },
  '90 dB(A) for 8 h, halved each 5 dB': { level: 90, step: 5 },
} as const;
type Rule = keyof typeof rules;

/**
 * The time at a sound level that makes a full daily dose, by a named workplace rule: t = t_ref / 2^((L − L_ref) / step).
 * Level in dB(A), 70 to 140; time in h. Without a rule: 85 dB(A) for 8 h, halved each 3 dB. A reference level in dB(A) and time in h of
 * one's own take the place of the rule's; the step stays. Workplace rules, not advice for leisure: for young people and weekly listening
 * stay much lower. Source: NIOSH 98-126; National Joint Council of Canada; 29 CFR 1910.95.
 */
export const allowedNoiseTime = calculation({
  id: 'allowed-noise-time',
  title: 'Time allowed at a sound level',
  topic: 'noise',
  formula: 't = t_ref / 2^((L − L_ref) / step)',
  inputs: {
    level: quantity('sound level', 'dB(A)', { min: 70, max: 140 }),
    rule: optional(choice('rule', Object.keys(rules) as Rule[])),
    reference_level: optional(quantity('reference level, if not the rule’s', 'dB(A)', { min: 70, max: 90 })),
    reference_time: optional(quantity('time allowed at the reference level', 'h', { min: 0.25, max: 40 })),
  },
  outputs: { time: 'h' },
  sources: ['niosh', 'equalEnergy', 'osha'],
  validity:
    'One steady level with quiet for the rest of the day; sudden bangs can harm at once, and a time above 24 h means no limit that day.',
  rule: '85 dB(A) for 8 h, halved each 3 dB, unless another is chosen',
  foundBy: ['headphones', 'how long can I listen', 'too loud', 'contest listening', 'hearing damage'],
  regionDependence: 'workplace law differs; the rule is named, and chosen by whoever asks',
  caution: 'noise',
  checks: [
    { name: 'time to full daily dose (85 dB, 3 dB exchange)', inputs: { rule: '85 dB(A) for 8 h, halved each 3 dB' } },
    { name: 'time to full daily dose (87 dB, equal energy)', inputs: { rule: '87 dB(A) for 8 h, equal energy' } },
    { name: 'time to full daily dose (OSHA: 90 dB, 5 dB exchange)', inputs: { rule: '90 dB(A) for 8 h, halved each 5 dB' } },
  ],
  work({ level, rule = '85 dB(A) for 8 h, halved each 3 dB', reference_level: ownLevel, reference_time: ownTime }) {
    const { step } = rules[rule];
    const reference = ownLevel ?? rules[rule].level;
    const full = ownTime ?? 8;
    const time = full / 2 ** ((level - reference) / step);
    const halvings = `(${put(level, '')} − ${put(reference, '')}) / ${out(step, '')}`;
    return {
      result: { time },
      steps: [
        ownLevel === undefined && ownTime === undefined
          ? `Rule: ${rule}.`
          : `Rule: ${put(reference, 'dB(A)')} for ${put(full, 'h')}, halved each ${out(step, 'dB')}.`,
        `t = ${put(full, 'h')} / 2^(${halvings}) = ${out(time, 'h')} = ${out(time * 60, 'min')}`,
        'That is a workplace dose for a grown-up’s whole day: set the level as low as you can follow.',
      ],
    };
  },
});
