import { scaleBand, scaleLinear } from 'd3-scale';
import { chart, element, words } from './svg.js';

/** Bars for days, in two parts: what is met again stands solid on the ground, what is new lies dashed on it. */

export interface DayBar {
  /** Written under the bar where there is room; null for none. */
  label: string | null;
  again: number;
  fresh: number;
}

/** Small enough that its words can be read at 320 px. */
const size = { width: 380, height: 170, left: 28, right: 4, top: 10, bottom: 22 } as const;

/** @param name what the chart shows, for somebody who cannot see it */
export function dayBars(bars: readonly DayBar[], name: string): string {
  const most = Math.max(1, ...bars.map(({ again, fresh }) => again + fresh));
  const x = scaleBand<number>()
    .domain(bars.map((_, index) => index))
    .range([size.left, size.width - size.right])
    .paddingInner(0.25);
  const y = scaleLinear()
    .domain([0, most])
    .nice(4)
    .range([size.height - size.bottom, size.top]);
  const ground = y(0);
  const ticks = y.ticks(4).filter(Number.isInteger);
  return chart(size.width, size.height, name, [
    ...ticks.flatMap((tick) => [
      element('line', { class: 'grid', x1: size.left, x2: size.width - size.right, y1: y(tick), y2: y(tick) }),
      words(String(tick), { class: 'end', x: size.left - 6, y: y(tick) + 4 }),
    ]),
    ...bars.flatMap(({ again, fresh, label }, index) => {
      const left = x(index) ?? 0;
      const width = x.bandwidth();
      return [
        ...(again > 0 ? [element('rect', { class: 'again', x: left, y: y(again), width, height: ground - y(again) })] : []),
        ...(fresh > 0
          ? [element('rect', { class: 'fresh', x: left, y: y(again + fresh), width, height: y(again) - y(again + fresh) })]
          : []),
        ...(label === null ? [] : [words(label, { class: 'middle', x: left + width / 2, y: size.height - 8 })]),
      ];
    }),
    element('line', { class: 'ground', x1: size.left, x2: size.width - size.right, y1: ground, y2: ground }),
  ]);
}
