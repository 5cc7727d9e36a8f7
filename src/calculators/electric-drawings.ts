import { formatQuantity } from '../../shared/format.js';
import type { Outcome } from '../../shared/safety-maths/calculation.js';
import { circle, line, measure, metres, numberOf, path, text } from './drawing-parts.js';
import type { Drawing } from './page-types.js';

/** Fuses on a scale of amperes, and the d.c. lead. */

/** Load and listed sizes on one scale of amperes. */
function fuseScale(load: number, fuse: number | null, series: readonly number[]): Drawing | null {
  const most = Math.max(load, ...series);
  if (load < 0 || series.length === 0 || series.length > 8 || most <= 0 || most > 200) return null;
  const at = (amps: number): number => 20 + (amps / most) * 280;
  const amps = (value: number): string => formatQuantity(value, 'A', { significant: 3 });
  const shown = measure(at(0), at(load), 158, '');
  return {
    title: 'The load and the listed sizes on one scale of amperes',
    description: `The load takes ${amps(load)}. Listed sizes: ${series.map(amps).join(', ')}. ${fuse === null ? 'None is large enough.' : `The first that is not below the load is ${amps(fuse)}.`}`,
    caption: 'Thick and filled: the one to choose. The maker’s own figure comes first.',
    width: 330,
    height: 190,
    paths: [
      line('thk', [20, 116], [310, 116]),
      ...series.flatMap((rating) => [
        line(rating === fuse ? 'thk' : 'thn', [at(rating), 116], [at(rating), 70]),
        circle(rating === fuse ? 'fill' : 'thn', at(rating), 60, rating === fuse ? 8 : 5),
      ]),
      ...shown.paths,
    ],
    texts: [
      ...series.map((rating, i) => text(at(rating), i % 2 === 0 || series.length < 4 ? 42 : 24, String(rating), 'middle', rating === fuse)),
      text(20, 136, '0'),
      text(310, 136, 'A', 'end'),
      text(Math.min(Math.max((at(0) + at(load)) / 2, 60), 270), 182, `load ${amps(load)}`),
    ],
  };
}

/** Battery, two wires and the radio, with the volts at both ends. */
export function lead(outcome: Outcome): Drawing | null {
  const [length, current, drop] = [numberOf(outcome, 'length_one_way'), numberOf(outcome, 'current'), numberOf(outcome, 'drop')];
  const supply = numberOf(outcome, 'supply') ?? numberOf(outcome, 'supply_voltage');
  if (length === null || current === null || drop === null) return null;
  const volts = (value: number): string => formatQuantity(value, 'V', { significant: 3 });
  const out = measure(96, 234, 34, metres(length));
  return {
    title: 'The current goes out in one wire and comes back in the other',
    description: `A battery feeds a radio through two wires, each ${metres(length)} long, at ${formatQuantity(current, 'A', { significant: 3 })}. Both wires together lose ${volts(drop)}.`,
    caption: 'A scheme, not to scale. Fuse close to the battery.',
    width: 330,
    height: 170,
    paths: [
      path('thk', 'M20 50h76v76h-76z'),
      path('thk', 'M234 50h76v76h-76z'),
      line('thk', [96, 70], [234, 70]),
      line('thk', [96, 106], [234, 106]),
      path('thk', 'M110 64h26v12h-26z'),
      path('fill', 'M182 70l-9 -4v8z'),
      path('fill', 'M166 106l9 -4v8z'),
      ...out.paths,
    ],
    texts: [
      text(58, 84, 'battery'),
      text(272, 84, 'radio'),
      ...(supply === null ? [] : [text(58, 104, volts(supply)), text(272, 104, volts(Math.max(supply - drop, 0)), 'middle', true)]),
      text(123, 59, 'fuse'),
      text(165, 148, `lost in both wires: ${volts(drop)}`),
      ...out.texts,
    ],
  };
}

export const fuses = (outcome: Outcome): Drawing | null => {
  const load = numberOf(outcome, 'current') ?? numberOf(outcome, 'load');
  const series = outcome.inputs['series']?.value;
  return load === null || !Array.isArray(series)
    ? null
    : fuseScale(
        load,
        numberOf(outcome, 'fuse') ?? numberOf(outcome, 'breaker'),
        [...(series as number[])].sort((a, b) => a - b),
      );
};
