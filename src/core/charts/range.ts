import { scaleLinear } from 'd3-scale';
import { chart, element, words } from './svg.js';

/** A chance as a dimension on a drawing: a line between two limits, over a scale from 0 to 100 %. */

const scaleSize = { width: 380, height: 78, side: 16 } as const;

export function rangeOnScale(low: number, high: number, name: string): string {
  const x = scaleLinear()
    .domain([0, 1])
    .range([scaleSize.side, scaleSize.width - scaleSize.side]);
  const [from, to, ground] = [x(low), x(high), 50];
  return chart(scaleSize.width, scaleSize.height, name, [
    element('rect', { class: 'band', x: from, y: 26, width: Math.max(2, to - from), height: ground - 26 }),
    element('line', { class: 'ground', x1: x(0), x2: x(1), y1: ground, y2: ground }),
    ...[0, 0.25, 0.5, 0.75, 1].flatMap((at) => [
      element('line', { class: 'ground', x1: x(at), x2: x(at), y1: ground, y2: ground + 6 }),
      words(String(at * 100), { class: 'middle', x: x(at), y: ground + 22 }),
    ]),
    ...[from, to].map((at) => element('line', { class: 'limit', x1: at, x2: at, y1: 8, y2: ground })),
    element('line', { class: 'limit', x1: from, x2: to, y1: 16, y2: 16 }),
  ]);
}

const size = { width: 380, height: 150, left: 34, right: 8, top: 10, bottom: 22 } as const;

export interface RangeDay {
  day: number;
  low: number;
  high: number;
}

/** Ranges over days: a tinted band between its limits. @param labels words under the first and the last day */
export function rangesOverDays(days: readonly RangeDay[], labels: readonly [string, string], name: string): string {
  const [first, last] = [days[0]?.day ?? 0, days.at(-1)?.day ?? 1];
  const x = scaleLinear()
    .domain([first, Math.max(first + 1, last)])
    .range([size.left, size.width - size.right]);
  const y = scaleLinear()
    .domain([0, 1])
    .range([size.height - size.bottom, size.top]);
  const line = (of: (day: RangeDay) => number): string => days.map((day) => `${x(day.day).toFixed(1)},${y(of(day)).toFixed(1)}`).join(' ');
  const back = [...days]
    .reverse()
    .map((day) => `${x(day.day).toFixed(1)},${y(day.low).toFixed(1)}`)
    .join(' ');
  return chart(size.width, size.height, name, [
    ...[0, 0.5, 1].flatMap((tick) => [
      element('line', { class: 'grid', x1: size.left, x2: size.width - size.right, y1: y(tick), y2: y(tick) }),
      words(`${tick * 100}`, { class: 'end', x: size.left - 6, y: y(tick) + 4 }),
    ]),
    element('polygon', { class: 'band', points: `${line(({ high }) => high)} ${back}` }),
    element('polyline', { class: 'limit', points: line(({ high }) => high) }),
    element('polyline', { class: 'limit', points: line(({ low }) => low) }),
    words(labels[0], { x: size.left, y: size.height - 6 }),
    words(labels[1], { class: 'end', x: size.width - size.right, y: size.height - 6 }),
  ]);
}
