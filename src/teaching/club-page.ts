import { dayNumber, dayWords } from '../core/calendar.js';
import { levelOf } from '../core/classes/level.js';
import { field } from '../study/index.js';
import type { Person } from '../accounts/index.js';
import type { ClubView } from './club-service.js';
import { figureOf } from './grid-parts.js';
import type { ClubPage } from './page-types.js';
import { candidates } from '../classes/index.js';

/** Classes by topics, and everybody as a group. */
export function clubPage({ now, packTitle, topics, classes, everybody }: ClubView, person: Person): ClubPage {
  return {
    view: 'teaching/club',
    data: {
      lead:
        packTitle === null
          ? 'No pack on this server has a make-up of papers yet.'
          : 'Each figure is the chance, per cent, that somebody would recall what the topic asks: the mean over those who were asked something of it. For everybody here the middle half stands below it, and figures are shown from five people on.',
      topics: topics.map(({ code, title }) => ({ code, title })),
      rows: [
        ...classes.map(({ head, topics: own }) => ({
          name: head.name,
          href: `/classes/${head.classId}`,
          people: candidates(head.members),
          cells: topics.map(({ code, title }) => {
            const found = own.find(({ topic }) => topic === code);
            return part(`${head.name}, ${title}`, found?.mean ?? null, found?.people ?? 0, null);
          }),
        })),
        {
          name: 'Everybody here',
          href: null,
          people: 'worked out once a day',
          cells: topics.map(({ code, title }) => {
            const found = everybody.find(({ topic }) => topic === code);
            const half = found === undefined ? null : `${Math.round(found.lower * 100)} to ${Math.round(found.upper * 100)}`;
            return part(`Everybody, ${title}`, found?.mean ?? null, found?.people ?? 0, half);
          }),
        },
      ],
      titleBlock: [
        field('Pack', packTitle ?? 'none', 6, { name: true }),
        field('As of', dayWords(dayNumber(now.getTime(), person.timeZone)), 6),
      ],
    },
  };
}

function part(of: string, mean: number | null, people: number, half: string | null): ClubPage['data']['rows'][number]['cells'][number] {
  const level = levelOf({ chance: mean, met: mean === null ? 0 : 99, of: 99 });
  const figure = figureOf(level, mean);
  const told =
    level === 'none' ? 'nothing to tell' : `${figure} per cent, ${people} people${half === null ? '' : `, the middle half ${half}`}`;
  return { figure, level, words: `${of}: ${told}` };
}
