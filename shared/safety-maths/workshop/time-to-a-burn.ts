import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { put } from '../working.js';
import { burnTimeAt } from './burn-table.js';

/**
 * How soon skin is seriously burnt at a temperature, as a least and a most time; null where the chart sets none. Temperature in °C, times
 * in s. The chart's origin is not known: good for a rough idea only. Source: chart of eight rows, product-safety mailing list.
 */
export const timeToABurn = calculation({
  id: 'time-to-a-burn',
  title: 'How fast hot things burn skin',
  topic: 'workshop',
  formula: 'time to a serious burn, from a chart',
  inputs: { temperature: quantity('temperature of what touches the skin', '°C', { min: 49, max: 500 }) },
  outputs: { time_min: 's', time_max: 's' },
  sources: ['burnTime'],
  validity: 'A rough guide for grown-up skin; children and old people burn sooner, and below 49 °C long contact can burn as well.',
  foundBy: ['burn', 'scald', 'hot heat sink', 'how hot is too hot', 'touching a hot valve'],
  caution: 'burn',
  checks: ['time to a serious skin burn'],
  work({ temperature }) {
    const { least, most } = burnTimeAt(temperature);
    return {
      result: { time_min: least, time_max: most },
      steps: [
        `At ${put(temperature, '°C')} ${spell(least, most)}.`,
        'A few degrees make all the difference: between 49 °C and 68 °C the time falls from minutes to one second.',
        'A soldering iron is at 350 °C or so: it burns at a touch.',
      ],
    };
  },
});

function spell(least: number | null, most: number | null): string {
  if (least === null && most === null) return 'no time stands in the chart';
  if (least === null) return `skin is seriously burnt in less than ${put(most ?? 0, 's')}`;
  if (most === null) return `it takes ${put(least, 's')} or more to burn skin seriously`;
  return least === most
    ? `skin is seriously burnt in about ${put(least, 's')}`
    : `skin is seriously burnt in ${put(least, 's')} to ${put(most, 's')}`;
}
