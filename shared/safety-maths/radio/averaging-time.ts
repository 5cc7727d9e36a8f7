import { calculation } from '../calculation.js';
import { CalculationInputError, choice } from '../inputs.js';
import { put } from '../working.js';

/** Over how many minutes a set of limits averages. Source: ICNIRP 2020, tables 5 and 6; 47 CFR 1.1310, table 1. */
const averagingTimes: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  'ICNIRP 2020': { 'whole body': 30, local: 6 },
  FCC: { occupational: 6, 'general population': 30 },
};

/** The averaging time of exposure limits in minutes, by the set of limits and what it tells apart. Source: ICNIRP 2020; 47 CFR 1.1310. */
export const averagingTime = calculation({
  id: 'averaging-time',
  title: 'Averaging time of exposure limits',
  topic: 'radio',
  formula: 'figures of the limits',
  inputs: {
    limits: choice('set of limits', ['ICNIRP 2020', 'FCC']),
    kind: choice('kind of exposure', ['whole body', 'local', 'occupational', 'general population']),
  },
  outputs: { time: 'min' },
  sources: ['averagingIcnirp', 'averagingFcc'],
  validity: 'The two sets named, at amateur frequencies; contact with an antenna, and short strong bursts, have limits of their own.',
  rule: 'ICNIRP 2020 tells whole body from local; the FCC tells workers from everyone else',
  foundBy: ['six minutes or thirty', 'averaging period', 'average exposure', 'time average'],
  caution: 'rf',
  checks: ['averaging time of exposure limits'],
  work({ limits, kind }) {
    const kinds = averagingTimes[limits] ?? {};
    const time = kinds[kind];
    if (time === undefined)
      throw new CalculationInputError('kind', `${limits} does not tell it apart; give one of: ${Object.keys(kinds).join(', ')}`);
    return {
      result: { time },
      steps: [
        `${limits}, ${kind}: the average over ${put(time, 'min')} counts.`,
        `Share of the time: s = t / T, with the minutes on the air t in the worst ${put(time, 'min')}, T = ${put(time, 'min')}`,
        'Take the busiest stretch, not the usual one, and the set of limits that your licence names.',
      ],
    };
  },
});
