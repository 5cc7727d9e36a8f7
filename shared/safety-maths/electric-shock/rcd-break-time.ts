import { calculation } from '../calculation.js';
import { choice, optional, quantity } from '../inputs.js';
import { put } from '../working.js';
import { noTrip, rcdTimes } from './rcd-table.js';

const multiple = { multiple_of_rated_residual_current: 'multiple' };

/**
 * How long an RCD may take at a multiple of its rated residual current, from 0 to 5; general type unless told. Times in s, null where none
 * is set. Between two rows: the longest time of the row below and the shortest time of the row above, as a larger current never opens it
 * later. trips: false up to half the rating, null between half and all of it (it may or may not), true from there. Source: IEC 61008-1,
 * 61009-1.
 */
export const rcdBreakTime = calculation({
  id: 'rcd-break-time',
  title: 'How fast an RCD trips',
  topic: 'electric-shock',
  formula: 'k = I / I_Δn; times of IEC 61008-1',
  inputs: {
    multiple: quantity('leakage current divided by the rated current of the RCD', '', { min: 0, max: 5 }),
    type: optional(choice('type of RCD', ['general', 'selective'])),
  },
  outputs: { trips: null, time_min: 's', time_max: 's' },
  sources: ['rcdTimes', 'rcdTimesDouble', 'rcdHalf'],
  validity: 'Healthy RCDs to IEC 61008-1 or IEC 61009-1 on alternating current; only a test with an instrument shows that one is healthy.',
  foundBy: ['how fast does an RCD trip', 'RCD time', 'RCD test', '30 mA', 'time-delayed RCD'],
  regionDependence: 'IEC devices, as in the UK and Europe; North American ground-fault interrupters follow another standard',
  caution: 'mains',
  checks: [
    { name: 'greatest break time of a general-type RCD', inputs: { type: 'general' }, keys: { ...multiple, time_s: 'time_max' } },
    { name: 'break time of a selective (S-type) RCD', inputs: { type: 'selective' }, keys: multiple },
    { name: 'RCD must not trip', keys: multiple },
  ],
  work({ multiple: times, type = 'general' }) {
    const rows = rcdTimes[type];
    const most = rows.filter((row) => row.multiple <= times).at(-1)?.most ?? null;
    const least = most === null ? null : (rows.find((row) => row.multiple >= times)?.least ?? null);
    const verdict =
      times <= noTrip
        ? 'That is at most half its rating: a healthy RCD must not trip.'
        : most === null
          ? 'That is between half its rating and all of it: the RCD may trip, and may not.'
          : `It must trip within ${put(most, 's')}, which is ${put(most * 1000, 'ms')}.`;
    return {
      result: { trips: times <= noTrip ? false : most === null ? null : true, time_min: least, time_max: most },
      steps: [
        `The current is ${put(times, '')} times the rating of a ${type} RCD: k = I / I_Δn = ${put(times, '')}`,
        verdict,
        ...(least === null
          ? []
          : [`It is delayed on purpose: it must hold for ${put(least, 's')}, so that an RCD nearer the fault opens first.`]),
        'An RCD cuts a shock short; it does not stop you feeling it, and it does not help if you touch line and neutral at once.',
      ],
    };
  },
});
