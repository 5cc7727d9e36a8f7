import { levelOf } from '../core/classes/level.js';
import { counted } from '../core/words.js';
import type { GridView } from './grid-service.js';
import type { PlanItem } from './plan-service.js';

/** The session plan in words. */

/** `7 of 12 chose “...”, 3 of them sure`, or for a number `7 of 12: multiplied instead of dividing`. */
export function mistakeWords({ people, of, sure, text }: PlanItem['mistakes'][number]): string {
  const chose = /^(“|the place)/.test(text) ? `${people} of ${of} chose ${text}` : `${people} of ${of}: ${text}`;
  return `${chose.replace(/(?<![.”])[.”]+$/, (end) => (end.includes('”') ? '”' : ''))}${sure === 0 ? '' : sure === people ? ', and were sure' : `, ${sure} of them sure`}.`;
}

/** What one item of the plan says in a line: the commonest mistake behind it, else what it costs. */
export function itemWords(item: PlanItem): string {
  const [mistake] = item.mistakes;
  return mistake === undefined ? costWords(item.rank) : mistakeWords(mistake);
}

/** `About 0.42 marks lost a candidate (0.10 to 0.71).` */
export function costWords({ mean, least, most }: PlanItem['rank']): string {
  return `About ${mean.toFixed(2)} marks lost a candidate (${least.toFixed(2)} to ${most.toFixed(2)}).`;
}

export const restsOn = ({ met, people }: PlanItem['rank'], members: number): string =>
  `Rests on ${counted(met, 'question')} met by ${people} of ${members}.`;

/** Whom to take aside: the two least likely to pass, each with the topics that are lowest. */
export function asideWords({ rows, topics }: Pick<GridView, 'rows' | 'topics'>): string[] {
  const inNeed = rows.filter(({ chance }) => chance !== null && (chance.low + chance.high) / 2 < asideBelow).slice(0, 2);
  return inNeed.flatMap((row) => {
    const lowest = topics
      .flatMap(({ code, title }) => {
        const [cell, chance] = [row.cells.get(code), row.topics.get(code) ?? null];
        return cell === undefined || chance === null || levelOf({ ...cell, chance }) !== 'low' ? [] : [{ title, chance }];
      })
      .sort((a, b) => a.chance - b.chance)
      .slice(0, 2)
      .map(({ title }) => title.toLowerCase());
    return lowest.length === 0 ? [] : [`${row.name}: ${lowest.join(', and ')}.`];
  });
}

/** An outlook better than even needs no taking aside (our own judgement, no source). */
const asideBelow = 0.5;
