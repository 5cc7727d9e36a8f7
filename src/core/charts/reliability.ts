import { scaleLinear } from 'd3-scale';
import { chart, element, words } from './svg.js';

/** What was predicted against what happened: points with their limits beside the line on which a perfect prediction would lie. */

export interface ReliabilityPoint {
  /** 0 to 1. */
  predicted: number;
  happened: number;
  low: number;
  high: number;
}

const size = { width: 320, height: 300, left: 40, right: 12, top: 10, bottom: 44 } as const;

export function reliabilityChart(points: readonly ReliabilityPoint[], name: string): string {
  const x = scaleLinear()
    .domain([0, 1])
    .range([size.left, size.width - size.right]);
  const y = scaleLinear()
    .domain([0, 1])
    .range([size.height - size.bottom, size.top]);
  const ticks = [0, 0.25, 0.5, 0.75, 1];
  return chart(size.width, size.height, name, [
    ...ticks.flatMap((tick) => [
      element('line', { class: 'grid', x1: x(0), x2: x(1), y1: y(tick), y2: y(tick) }),
      words(String(tick * 100), { class: 'end', x: size.left - 6, y: y(tick) + 4 }),
      words(String(tick * 100), { class: 'middle', x: x(tick), y: size.height - size.bottom + 18 }),
    ]),
    element('line', { class: 'ground', x1: x(0), x2: x(1), y1: y(0), y2: y(0) }),
    element('line', { class: 'fresh', x1: x(0), x2: x(1), y1: y(0), y2: y(1) }),
    words('told, per cent', { class: 'middle', x: x(0.5), y: size.height - 6 }),
    ...points.flatMap(({ predicted, happened, low, high }) => [
      element('line', { class: 'limit', x1: x(predicted), x2: x(predicted), y1: y(low), y2: y(high) }),
      element('circle', { class: 'again', cx: x(predicted), cy: y(happened), r: 5 }),
    ]),
  ]);
}
