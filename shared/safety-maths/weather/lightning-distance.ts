import { calculation } from '../calculation.js';
import { choice, optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

const mile = 1609.344;
const metresEachSecond = {
  'speed of sound, 343 m/s': 343,
  'about 340 m/s': 340,
  '3 s to the kilometre': 1000 / 3,
  '5 s to the mile': mile / 5,
} as const;
const rules = Object.keys(metresEachSecond) as (keyof typeof metresEachSecond)[];

/**
 * How far away lightning struck, from the time between flash and thunder: d = v × t. Time in s; distance in km. The rule names v:
 * three seconds to the kilometre (333 m/s, if none is given), five seconds to the mile (322 m/s, on the cautious side), sound at about
 * 340 m/s (15 °C) or at 343 m/s (20 °C). Source: public lightning advice; handbook values of the speed of sound.
 */
export const lightningDistance = calculation({
  id: 'lightning-distance',
  title: 'How far away is the lightning',
  topic: 'weather',
  formula: 'd = v × t',
  inputs: {
    time: quantity('time from flash to thunder', 's', { min: 0, max: 120 }),
    rule: optional(choice('rule', rules)),
  },
  outputs: { distance: 'km' },
  sources: ['lightning', 'sound', 'soundRound'],
  validity:
    'A flash and its own thunder; in a busy storm they are easily mixed up, and wind, hills and noise can hide thunder that is near.',
  rule: '3 s to the kilometre, unless another is chosen; five seconds to the mile puts the storm nearer',
  foundBy: ['thunder', 'storm', 'flash to bang', 'count the seconds', 'how far is the lightning'],
  caution: 'lightning',
  checks: [
    { name: 'distance of lightning from the flash-to-bang time (3 s per km)', inputs: { rule: '3 s to the kilometre' } },
    { name: 'distance of lightning from the flash-to-bang time (5 s per mile)', inputs: { rule: '5 s to the mile' } },
    { name: 'distance of lightning from the speed of sound', inputs: { rule: 'speed of sound, 343 m/s' }, ignore: ['speed_m_per_s'] },
  ],
  work({ time, rule = '3 s to the kilometre' }) {
    const distance = (metresEachSecond[rule] * time) / 1000;
    return {
      result: { distance },
      steps: [
        `Light comes at once, sound follows: d = v × t. Rule: ${rule}.`,
        `d = ${out(metresEachSecond[rule], 'm/s')} × ${put(time, 's')} = ${out(distance, 'km')} = ${out((distance * 1000) / mile, 'mile')}`,
        'Thunder that can be heard is close enough: go in at once.',
      ],
    };
  },
});
