import { levelOf } from '../core/classes/level.js';
import { awayDays, daysSince, seenWords } from '../classes/index.js';
import { shownRange } from '../outlook/index.js';
import type { GridPage, OutlookPart } from './page-types.js';
import type { GridRow, GridView } from './grid-service.js';

/** The rows and cells of the class grid. */

export type ChanceOf = (row: GridRow, topic: string) => number | null;

/** Of what was never asked first sights tell; without any answer nothing is told. */
export const rightOf: ChanceOf = (row, topic) => ((row.cells.get(topic)?.met ?? 0) === 0 ? null : (row.topics.get(topic) ?? null));
export const recallOf: ChanceOf = (row, topic) => row.cells.get(topic)?.recall ?? null;

/** Not here for a week; whoever was never here is away from a week after joining on. */
export function isAway({ joinedAt, lastSeenAt, today, timeZone }: GridRow): boolean {
  return (daysSince(lastSeenAt ?? joinedAt, today, timeZone) ?? 0) >= awayDays;
}

export function rowPart(row: GridRow, { topics }: GridView, root: string, chanceOf: ChanceOf): GridPage['data']['rows'][number] {
  const days = daysSince(row.lastSeenAt, row.today, row.timeZone);
  const needs = [
    ...(isAway(row) ? [days === null ? 'never here yet' : `last here ${seenWords(days)}`] : []),
    ...(row.surelyWrong > 0 ? [`sure and wrong on ${row.surelyWrong}`] : []),
  ];
  return {
    name: row.name,
    needs: needs.length === 0 ? null : needs.join('; '),
    outlook: row.chance === null ? null : outlookPart(row.chance),
    cells: topics.map(({ code, title }) => {
      const { met, of } = row.cells.get(code) ?? { met: 0, of: 0 };
      const chance = chanceOf(row, code);
      const level = levelOf({ chance, met, of });
      const figure = figureOf(level, chance);
      return {
        figure,
        level,
        share: `${met}/${of}`,
        href: `${root}/members/${row.personId}/topics/${code}`,
        words: `${row.name}, ${title}: ${level === 'none' ? 'not asked yet' : level === 'few' ? 'too few questions to tell' : `${figure} per cent`}, ${met} of ${of} questions asked`,
      };
    }),
  };
}

export const figureOf = (level: string, chance: number | null): string =>
  level === 'none' || chance === null ? '–' : level === 'few' ? 'few' : String(Math.round(chance * 100));

export function outlookPart(chance: { low: number; high: number }): OutlookPart {
  const { low, high } = shownRange(chance);
  const percents = [low, (low + high) / 2, high].map((each) => Math.min(99, Math.max(1, Math.round(each * 100)))) as [
    number,
    number,
    number,
  ];
  const x = (percent: number): number => Math.round(10 + (percent / 100) * 700) / 10;
  return {
    value: String(percents[1]),
    range: `${percents[0]}–${percents[2]}`,
    from: x(percents[0]),
    at: x(percents[1]),
    to: x(percents[2]),
  };
}

/** Over members of whom enough is known: the mean of their own figures. */
export function meanOf(rows: readonly GridRow[], code: string, chanceOf: ChanceOf): GridPage['data']['means'][number] {
  const known = rows.flatMap((row) => {
    const [cell, chance] = [row.cells.get(code), chanceOf(row, code)];
    return cell === undefined || chance === null || levelOf({ ...cell, chance }) === 'few' ? [] : [chance];
  });
  if (known.length === 0) return { figure: '–', level: 'none' };
  const mean = known.reduce((sum, each) => sum + each, 0) / known.length;
  const level = levelOf({ chance: mean, met: 99, of: 99 });
  return { figure: figureOf(level, mean), level };
}
