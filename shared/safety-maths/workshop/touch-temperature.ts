import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { put } from '../working.js';
import { touchRows } from './burn-table.js';

/**
 * The temperature of a surface above which skin burns when it touches for so long: the row of the table that is not shorter. Time in s,
 * 5 s to 8 h; temperature in °C. Source: ASTM C1055 (5 s); EN ISO 13732-1, table 1.
 */
export const touchTemperature = calculation({
  id: 'touch-temperature',
  title: 'How hot a surface may be to touch',
  topic: 'workshop',
  formula: 'burn threshold, from a table',
  inputs: { time: quantity('how long it is touched', 's', { min: 5, max: 28_800 }) },
  outputs: { temperature: '°C' },
  sources: ['touchShort', 'touchLong'],
  validity: 'Healthy grown-up skin on a small part of the body; in short contact bare metal burns sooner than plastic or wood.',
  rule: 'ASTM C1055 for 5 s, the European standard above that, and the longer row in between',
  foundBy: ['surface temperature', 'hot case', 'touch temperature', 'heat sink too hot', 'warm equipment'],
  caution: 'burn',
  checks: ['surface temperature tolerated for 5 s', 'burn threshold for long contact'],
  work({ time }) {
    const row = touchRows.reduceRight((longer, one) => (one.time >= time ? one : longer));
    return {
      result: { temperature: row.temperature },
      steps: [
        `The row that is not shorter than ${put(time, 's')}: ${put(row.time, 's')} (${row.where}).`,
        `For that long the limit is ${put(row.temperature, '°C')}: above it skin burns. It is no comfortable temperature: stay well below.`,
        'Pain comes too late to be a test: hold a hand near before you touch, and never reach into live equipment.',
      ],
    };
  },
});
