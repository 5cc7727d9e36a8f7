import { formatQuantity } from '../../shared/format.js';
import type { Outcome } from '../../shared/safety-maths/calculation.js';
import type { Drawing } from './page-types.js';

/** What drawings are put together from. Lengths are in the drawing's own units, 330 wide. */

export type Path = Drawing['paths'][number];
export type Text = Drawing['texts'][number];

export const path = (kind: Path['kind'], d: string): Path => ({ kind, d });
export const text = (x: number, y: number, words: string, anchor: Text['anchor'] = 'middle', bold = false): Text => ({
  x: round(x),
  y: round(y),
  anchor,
  text: words,
  bold,
});
export const line = (kind: Path['kind'], ...points: (readonly [number, number])[]): Path =>
  path(kind, points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${round(x)} ${round(y)}`).join(''));
export const circle = (kind: Path['kind'], x: number, y: number, r: number): Path =>
  path(
    kind,
    `M${round(x - r)} ${round(y)}a${round(r)} ${round(r)} 0 1 0 ${round(2 * r)} 0a${round(r)} ${round(r)} 0 1 0 ${round(-2 * r)} 0z`,
  );

export const round = (value: number): number => Math.round(value * 10) / 10;

/** A measure between two points on one level, with arrow heads and its words above. */
export function measure(x1: number, x2: number, y: number, words: string): { paths: Path[]; texts: Text[] } {
  const [left, right] = [Math.min(x1, x2), Math.max(x1, x2)];
  const heads =
    right - left < 26 ? [] : [path('fill', `M${round(left)} ${y}l9 -2.6v5.2z`), path('fill', `M${round(right)} ${y}l-9 -2.6v5.2z`)];
  return {
    paths: [
      line('thn', [left, y], [right, y]),
      line('thn', [left, y - 6], [left, y + 6]),
      line('thn', [right, y - 6], [right, y + 6]),
      ...heads,
    ],
    texts: [text((left + right) / 2, y - 8, words)],
  };
}

/** A number of an outcome by its name, from the results or else the inputs; null when it is none. */
export function numberOf({ result, inputs }: Outcome, name: string): number | null {
  const value = (result[name] ?? inputs[name])?.value;
  return typeof value === 'number' && Number.isFinite(value) ? value : null;
}

export const metres = (value: number): string => formatQuantity(value, 'm', { significant: 3 });
