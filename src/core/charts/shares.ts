import { scaleLinear } from 'd3-scale';
import { chart, element, words } from './svg.js';

/** Shares with their limits, a row each, over one scale from 0 to 100 %: a dot between two strokes. */

export interface ShareRow {
  label: string;
  /** All between 0 and 1; null leaves the row empty. */
  share: { value: number; low: number; high: number } | null;
}

const size = { width: 380, left: 96, right: 16, row: 34, foot: 28 } as const;

/** @param name what the chart shows, for somebody who cannot see it */
export function sharesOnScale(rows: readonly ShareRow[], name: string): string {
  const x = scaleLinear()
    .domain([0, 1])
    .range([size.left, size.width - size.right]);
  const ground = rows.length * size.row;
  return chart(size.width, ground + size.foot, name, [
    ...[0, 0.25, 0.5, 0.75, 1].flatMap((at) => [
      element('line', { class: 'grid', x1: x(at), x2: x(at), y1: 0, y2: ground }),
      words(String(at * 100), { class: 'middle', x: x(at), y: ground + 20 }),
    ]),
    element('line', { class: 'ground', x1: x(0), x2: x(1), y1: ground, y2: ground }),
    ...rows.flatMap(({ label, share }, index) => {
      const y = (index + 0.5) * size.row;
      const title = words(label, { class: 'end', x: size.left - 10, y: y + 4 });
      if (share === null) return [title];
      const { low, high, value } = { low: x(share.low), high: x(share.high), value: x(share.value) };
      return [
        title,
        element('line', { class: 'limit', x1: low, x2: high, y1: y, y2: y }),
        ...[low, high].map((at) => element('line', { class: 'limit', x1: at, x2: at, y1: y - 7, y2: y + 7 })),
        element('circle', { class: 'again', cx: value, cy: y, r: 5 }),
      ];
    }),
  ]);
}
