import type { Outcome } from '../../shared/safety-maths/calculation.js';
import { line, measure, metres, numberOf, path, text } from './drawing-parts.js';
import type { Drawing } from './page-types.js';

/** Ladders and masts, to scale. */

/** The leaning ladder to scale: height of the point of rest and distance of the feet. */
function ladder(height: number, base: number, above: number | null): Drawing | null {
  if (height <= 0 || base <= 0 || base / height > 3 || base / height < 0.02) return null;
  const scale = Math.min(190 / height, 190 / base);
  const [top, floor, wall] = [230 - height * scale, 230, 250];
  const foot = wall - base * scale;
  const out = measure(foot, wall, 258, metres(base));
  const slope = base / height;
  const beyond = above !== null ? Math.min(26, top - 8) : 10;
  return {
    title: 'The ladder against the wall, to scale',
    description: `A ladder leans on a wall. It rests at ${metres(height)} and its feet stand ${metres(base)} from the wall.`,
    caption:
      above !== null
        ? `At least ${metres(above)} of ladder stands above the landing.`
        : 'Drawn to scale. Firm, level ground, and the top secured.',
    width: 330,
    height: 286,
    paths: [
      line('thk', [wall, 12], [wall, floor], [20, floor]),
      line('thk', [foot, floor], [wall + slope * beyond, top - beyond]),
      line('thk', [foot + 7, floor], [wall + slope * beyond + 7, top - beyond]),
      line('thn', [wall + 12, top], [wall + 60, top]),
      line('thn', [wall + 52, top], [wall + 52, floor]),
      ...out.paths,
    ],
    texts: [text(wall + 48, (top + floor) / 2, metres(height), 'end'), ...out.texts.map((each) => ({ ...each, y: 280 }))],
  };
}

/** A mast from the side, the circle it can fall in, and the line when its distance is known. */
export function mast(outcome: Outcome): Drawing | null {
  const radius = numberOf(outcome, 'fall_radius');
  if (radius === null || radius <= 0) return null;
  const away = numberOf(outcome, 'horizontal_distance');
  const reach = Math.max(radius, away ?? 0) * 1.1;
  const scale = 250 / reach;
  const tip = 40 + radius * scale;
  const out = measure(40, tip, 178, metres(radius));
  return {
    title: 'The mast and the ground it can fall on, from the side',
    description: `A mast with its antenna and margin falls within ${metres(radius)} of its foot.${away === null ? '' : ` The line is ${metres(away)} away.`}`,
    caption:
      away === null
        ? 'Dashed: the path of the top. To scale along the ground.'
        : 'Dashed: the path of the top. Treat every overhead line as live and bare.',
    width: 330,
    height: 210,
    paths: [
      line('thk', [20, 160], [316, 160]),
      line('thk', [40, 160], [40, 160 - Math.min(140, radius * scale)]),
      path('dash', `M40 ${160 - Math.min(140, radius * scale)}Q${tip} ${160 - Math.min(140, radius * scale)} ${tip} 160`),
      ...(away === null
        ? []
        : [line('thk', [40 + away * scale, 160], [40 + away * scale, 60]), line('thk', [30 + away * scale, 66], [50 + away * scale, 66])]),
      ...out.paths,
    ],
    texts: [
      ...out.texts.map((each) => ({ ...each, y: 200 })),
      text(52, 30, 'mast', 'start'),
      ...(away === null ? [] : [text(40 + away * scale, 52, `line, ${metres(away)}`, 'end')]),
    ],
  };
}

export const ladderFrom =
  (landing: boolean) =>
  (outcome: Outcome): Drawing | null => {
    const height = numberOf(outcome, 'height') ?? numberOf(outcome, 'landing_height');
    const base = numberOf(outcome, 'base');
    const above = landing ? (numberOf(outcome, 'height_above') ?? 1) : null;
    return height === null || base === null ? null : ladder(height, base, above);
  };
