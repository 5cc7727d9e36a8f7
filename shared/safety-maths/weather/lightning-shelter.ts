import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** From flash to thunder in s, how fast the thunder comes in s for each km, and the wait after the last thunder in min. */
const rule = { time: 30, secondsEachKilometre: 3, wait: 30 } as const;

/**
 * The 30-30 rule: shelter when 30 s or less lie between flash and thunder, and stay until 30 min after the last thunder. Time since the
 * last thunder in min, or none; distance in km at three seconds to the kilometre; rest of the wait in min, null if no time is given.
 * Source: public lightning advice.
 */
export const lightningShelter = calculation({
  id: 'lightning-shelter',
  title: 'When to take shelter from lightning',
  topic: 'weather',
  formula: 't_left = 30 min − t',
  inputs: { since_last_thunder: optional(quantity('time since the last thunder', 'min', { min: 0, max: 1440 })) },
  outputs: { shelter_time: 's', shelter_distance: 'km', wait: 'min', wait_left: 'min' },
  sources: ['thirtyThirty'],
  validity: 'Storms that are seen and heard; the first flash can strike without warning, so do not wait for it when a storm builds up.',
  rule: 'The 30-30 rule; stricter advice is to go in at the first thunder, however far',
  foundBy: ['thunderstorm', '30-30 rule', 'when is it safe to go out again', 'field day storm', 'lightning shelter'],
  caution: 'lightning',
  checks: [
    { name: 'flash-to-bang time at which to take shelter', keys: { time_s: 'shelter_time', distance_km: 'shelter_distance' } },
    { name: 'wait after the last thunder', keys: { time_min: 'wait' } },
  ],
  work({ since_last_thunder: since }) {
    const distance = rule.time / rule.secondsEachKilometre;
    const left = since === undefined ? null : Math.max(0, rule.wait - since);
    return {
      result: { shelter_time: rule.time, shelter_distance: distance, wait: rule.wait, wait_left: left },
      steps: [
        `${put(rule.time, 's')} or less from flash to thunder, about ${put(distance, 'km')}: be inside. Sooner is better.`,
        `Each new thunder starts the wait of ${put(rule.wait, 'min')} again.`,
        since === undefined || left === null
          ? 'Give the time since the last thunder to see how much of the wait is left.'
          : left === 0
            ? `${put(since, 'min')} without thunder: the wait of this rule is over. Look at the sky and the forecast before you go out.`
            : `Wait left: t_left = ${put(rule.wait, 'min')} − ${put(since, 'min')} = ${out(left, 'min')}`,
        'A tent, a tree or a mast is no shelter. Do not go out to pull plugs or feeders.',
      ],
    };
  },
});
